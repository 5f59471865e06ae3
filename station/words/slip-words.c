#include "words/slip-words.h"

#include <stdio.h>
#include <string.h>

static const char *const texts[SW_KINDS] = {
#define W(name, text) [SW_##name] = text,
    SLIP_WORDS(W)
#undef W
};

static size_t add(char *out, size_t used, size_t size, const char *text, size_t length)
{
	size_t n = length < size - used ? length : size - used - 1;
	while (n < length && n && ((unsigned char)text[n] & 0xc0) == 0x80)
		n--;
	memcpy(out + used, text, n);
	out[used + n] = 0;
	return used + n;
}

static const char *value_of(const char *name, size_t length, const char *const values[])
{
	for (; values[0]; values += 2)
		if (strncmp(values[0], name, length) == 0 && !values[0][length])
			return values[1];
	return "";
}

void slip_part(char *out, size_t size, enum slip_word word, const char *const values[])
{
	size_t used = 0;
	out[0] = 0;
	for (const char *at = texts[word]; *at;) {
		size_t plain = strcspn(at, "{");
		used = add(out, used, size, at, plain);
		at += plain;
		if (!*at)
			break;
		size_t name = strcspn(at, "}") - 1;
		const char *value = value_of(at + 1, name, values);
		used = add(out, used, size, value, strlen(value));
		at += name + 2;
	}
}

void slip_sentence(char *out, size_t size, enum slip_word word, const char *const values[])
{
	slip_part(out, size, word, values);
	if (out[0] >= 'a' && out[0] <= 'z')
		out[0] = (char)(out[0] - 'a' + 'A');
}

const char *slip_text(enum slip_word word)
{
	return texts[word];
}

void slip_join(char *text, size_t size, const char *between, const char *more)
{
	size_t used = strlen(text);
	if (!*more)
		return;
	if (used)
		used = add(text, used, size, between, strlen(between));
	add(text, used, size, more, strlen(more));
}

void slip_number(long long number, char out[SLIP_NUMBER_TEXT])
{
	snprintf(out, SLIP_NUMBER_TEXT, "%07lld", number);
}
