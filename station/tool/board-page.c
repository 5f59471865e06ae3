#include "tool/board-page.h"

#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

#include "words/languages.h"
#include "words/said.h"

/* Anew each time, so that nobody holds it open or laid a link in its place. NULL with errno set. */
static FILE *begin(const char *file)
{
	unlink(file);
	int fd = open(file, O_WRONLY | O_CREAT | O_EXCL | O_NOFOLLOW | O_CLOEXEC, 0600);
	FILE *out = fd < 0 ? NULL : fdopen(fd, "w");
	if (fd >= 0 && !out)
		close(fd);
	if (out)
		fputs("<!doctype html>\n<meta charset=\"utf-8\">\n<meta name=\"referrer\" "
		      "content=\"no-referrer\">\n",
		      out);
	return out;
}

static int end(FILE *out)
{
	int n = fflush(out) || ferror(out) || fsync(fileno(out)) < 0 ? -errno : 0;
	return fclose(out) && n == 0 ? -errno : n;
}

int board_page_leads(const char *file, const char *address)
{
	FILE *out = begin(file);
	if (!out)
		return -errno;
	fprintf(out, "<meta http-equiv=\"refresh\" content=\"0;url=%s\">\n<title>Count board</title>\n",
	        address);
	return end(out);
}

static void put_escaped(FILE *out, const char *text)
{
	for (; *text; text++)
		if (*text == '<')
			fputs("&lt;", out);
		else if (*text == '&')
			fputs("&amp;", out);
		else
			putc(*text, out);
}

static void put_said(FILE *out, const struct language *l)
{
	fprintf(out, "<p lang=\"%s\" dir=\"%s\">", language_code(l), language_is_rtl(l) ? "rtl" : "ltr");
	put_escaped(out, saying_text_in(l, SAY_B_WAITING));
	putc('\n', out);
}

/* In English, and in each language that says it otherwise. */
static void put_in_all(FILE *out)
{
	struct error e = {0};
	struct languages all = {0};
	languages_read(&all, languages_folder(), &e); /* what cannot be read is not there */
	put_said(out, NULL);
	for (int i = 0; i < all.n; i++)
		if (strcmp(saying_text_in(all.list[i], SAY_B_WAITING), saying_text_in(NULL, SAY_B_WAITING)) !=
		    0)
			put_said(out, all.list[i]);
	languages_free(&all);
}

int board_page_waits(const char *file)
{
	FILE *out = begin(file);
	if (!out)
		return -errno;
	fputs(
	    "<meta http-equiv=\"refresh\" content=\"1\">\n<title>Count board</title>\n"
	    "<style>html { background: #000; color: #fff; font: 6vmin sans-serif; padding: 8vmin }</style>\n",
	    out);
	put_in_all(out);
	fputs("<p id=\"time\">\n<script>\n"
	      "const tell = () => { document.title = document.getElementById('time').textContent = new "
	      "Date().toTimeString().slice(0, 8); };\n"
	      "setInterval(tell, 1000);\ntell();\n</script>\n",
	      out);
	return end(out);
}
