#include <errno.h>
#include <inttypes.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/json.h"
#include "tool/fault.h"

#define LINES_MAX 300
#define LINES_TEXT "300"

/* A line of the journal: {"__REALTIME_TIMESTAMP":"µs","PRIORITY":"4","MESSAGE":"…"}; a message of odd bytes is no text. */
static void print_entry(struct fault *f, const char *line)
{
	_cleanup_(json_drop) json_t *o = json_read(line, strlen(line), NULL);
	int64_t s = strtoll(json_text(o, "__REALTIME_TIMESTAMP"), NULL, 10) / 1000000;
	char before[60];
	snprintf(before, sizeof before, "%" PRId64 " <%d> ", s, atoi(json_text(o, "PRIORITY")));
	fault_masked(f, before, json_text(o, "MESSAGE"));
}

static void print_line(struct fault *f, const char *line)
{
	fault_masked(f, "", line);
}

/* The last of them: a ring, of which the oldest goes first. */
static void print_last(struct fault *f, FILE *in, void (*print)(struct fault *f, const char *line))
{
	static char *lines[LINES_MAX];
	size_t sizes[LINES_MAX] = {0};
	int64_t count = 0;
	while (getline(&lines[count % LINES_MAX], &sizes[count % LINES_MAX], in) > 0)
		count++;
	for (int64_t i = count > LINES_MAX ? count - LINES_MAX : 0; i < count; i++)
		print(f, lines[i % LINES_MAX]);
	for (int i = 0; i < LINES_MAX; i++) {
		free(lines[i]);
		lines[i] = NULL;
	}
	if (!count)
		buf_add_text(&f->out, "none\n");
}

void fault_messages(struct fault *f, const char *file)
{
	fault_title(f,
	            "the station's last messages: seconds since 1970, priority, and what passes of the text");
	FILE *in = file ? fopen(file, "re")
	                : popen("journalctl --unit=bandtallyd --lines=" LINES_TEXT
	                        " --output=json --output-fields=PRIORITY,MESSAGE --no-pager 2>/dev/null",
	                        "re");
	if (!in) {
		fault_masked(f, "they could not be read: ", strerror(errno));
		return;
	}
	print_last(f, in, file ? print_line : print_entry);
	if (file)
		fclose(in);
	else if (pclose(in) != 0)
		buf_add_text(&f->out,
		             "the journal could not be asked: give a file of messages with --messages\n");
}
