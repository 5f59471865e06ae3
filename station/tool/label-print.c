/* From a document to bandtally-print, and what the station says of the room that it is for. */
#include <errno.h>
#include <limits.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

#include "base/clock.h"
#include "base/own.h"
#include "tool/client.h"
#include "tool/label.h"
#include "tool/print.h"

json_t *label_document(const char *kind, const char *site)
{
	char when[26];
	int64_t now = clock_now().wall_ms;
	clock_text_full(now, clock_utc_min(now), when);
	return json_pack("{s:i,s:s,s:s,s:s}", "v", 1, "kind", kind, "time", when, "site", site);
}

static int hand_over(const json_t *doc, const char *const options[3])
{
	char path[PATH_MAX];
	_cleanup_(buf_free) struct buf text = {0};
	int pipes[2];
	if (json_write_canonical(doc, &text) < 0 || own_path(path, sizeof path, "bandtally-print") < 0 ||
	    pipe(pipes) < 0) {
		fprintf(stderr, "bandtally: cannot print: %s: try again\n", strerror(errno));
		return EXIT_FAILED;
	}
	pid_t pid = fork();
	if (pid == 0) {
		dup2(pipes[0], 0);
		close(pipes[0]);
		close(pipes[1]);
		execl(path, "bandtally-print", options[0], options[1], options[2], (char *)NULL);
		fprintf(stderr, "bandtally: cannot start %s: %s: install it beside bandtally\n", path,
		        strerror(errno));
		_exit(EXIT_FAILED);
	}
	close(pipes[0]);
	for (size_t at = 0; pid > 0 && at < text.size;) {
		ssize_t wrote = write(pipes[1], text.data + at, text.size - at);
		if (wrote <= 0)
			break;
		at += (size_t)wrote;
	}
	close(pipes[1]);
	int status = 1 << 8;
	if (pid > 0)
		waitpid(pid, &status, 0);
	return WIFEXITED(status) ? WEXITSTATUS(status) : EXIT_FAILED;
}

int print_document(const json_t *doc, const char *to, const char *where)
{
	return hand_over(doc, (const char *const[3]){to, where});
}

int print_check(const json_t *doc, const char *to, const char *where)
{
	return hand_over(doc, (const char *const[3]){"--check", where ? to : NULL, where});
}

int label_print(const struct words *w, json_t *doc)
{
	_cleanup_(json_drop) json_t *d = doc;
	const char *pdf = words_value(w, LABEL_OPTIONS, "pdf"),
	           *printer = words_value(w, LABEL_OPTIONS, "printer");
	if (words_given(w, LABEL_OPTIONS, "list"))
		return EXIT_OK;
	return print_document(d, pdf ? "--pdf" : "--printer", pdf ? pdf : printer);
}

json_t *label_status(struct error *e)
{
	json_t *a = client_ask(json_pack("{s:s}", "do", "status"), e);
	json_t *status = a ? json_incref(json_object_get(a, "status")) : NULL;
	json_decref(a);
	return status;
}

void label_code(char out[OWN_CODE_MAX], const char *site, struct own_code code)
{
	snprintf(code.site, sizeof code.site, "%.2s", site);
	if (own_code_write(&code, out) < 0)
		out[0] = 0;
}

static bool has_camera(const json_t *status, int room)
{
	size_t i;
	const json_t *x;
	json_array_foreach((json_t *)json_object_get(status, "drivers"), i, x)
	{
		if (json_number(x, "room", 0) == room && json_truth(x, "camera"))
			return true;
	}
	return false;
}

int label_room_of(const json_t *status, int number, struct label_room *room, struct error *e)
{
	size_t i;
	const json_t *x;
	json_array_foreach((json_t *)json_object_get(status, "rooms"), i, x)
	{
		int this = (int)json_number(x, "number", 0);
		if (number && this != number)
			continue;
		*room = (struct label_room){.number = this,
		                            .name = json_text(x, "name"),
		                            .alone = json_truth(x, "single"),
		                            .camera = has_camera(status, this),
		                            .stores = json_truth(x, "stores")};
		snprintf(room->language, sizeof room->language, "%s", json_text(x, "language"));
		return 0;
	}
	return error_set(e, -ENOENT, "room %d is not in station.ini: see 'bandtally status'", number);
}
