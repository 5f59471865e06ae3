# Where words stand on a printed page: reads `pdftotext -bbox`, prints "page left top right bottom" in points of
# 1/72 inch, once for each place where exactly these words stand on a line of their own, or over two lines.
#   pdftotext -bbox cards.pdf - | awk -v want='FINAL COUNT' -f find-words.awk
BEGIN { n = split(want, words, " ") }
/<page / { page++ }
/<word / {
	split($0, part, "\"")
	N++
	at[N] = page; left[N] = part[2] + 0; top[N] = part[4] + 0; right[N] = part[6] + 0; bottom[N] = part[8] + 0
	text[N] = $0
	sub(/^[^>]*>/, "", text[N]); sub(/<\/word>.*/, "", text[N])
}
# NO is not the NO of NO CODE: two words of one line are less than a letter's height apart.
function together(i, k) {
	return i >= 1 && k <= N && at[i] == at[k] && top[i] == top[k] && left[k] - right[i] < bottom[i] - top[i] &&
	       left[k] >= right[i]
}
END {
	for (i = 1; i + n - 1 <= N; i++) {
		for (k = 0; k < n && text[i + k] == words[k + 1] && at[i + k] == at[i]; k++)
			;
		if (k < n || together(i - 1, i) || together(i + n - 1, i + n))
			continue
		l = left[i]; t = top[i]; r = right[i]; b = bottom[i]
		for (k = i; k < i + n; k++) {
			if (left[k] < l) l = left[k]
			if (right[k] > r) r = right[k]
			if (bottom[k] > b) b = bottom[k]
		}
		print at[i], l, t, r, b
	}
}
