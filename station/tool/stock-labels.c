#include "tool/stock-labels.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>

#include "base/file.h"
#include "tool/client.h"
#include "tool/import.h"

static int write_list(const char *path)
{
	struct error e = {0};
	_cleanup_(buf_free) struct buf text = {0};
	_cleanup_(json_drop) json_t *a = client_ask(json_pack("{s:s}", "do", "labels-write"), &e);
	if (!a)
		return client_fail(&e);
	int n = json_write_canonical(json_object_get(a, "list"), &text);
	if (n == 0)
		n = buf_add_text(&text, "\n");
	if (n == 0)
		n = file_replace_ours(path, 0644, text.data, text.size, "{\"jws\":\"");
	if (n < 0) {
		error_set(&e, n, "cannot write %.300s: %s: give a path that can be written", path,
		          file_words(n));
		return client_fail(&e);
	}
	printf("%d label numbers in %s, signed by the key %s: whoever takes it types that\n",
	       (int)json_number(a, "labels", 0), path, json_text(a, "kid"));
	return EXIT_OK;
}

static int take_list(const char *path, const char *key)
{
	struct error e = {0}, why = {0};
	_cleanup_(buf_free) struct buf text = {0};
	if (import_read_file(path, &text, &e) < 0)
		return client_fail(&e);
	json_t *list = json_read(text.data ? text.data : "", text.size, &why);
	if (!list) {
		error_set(&e, -EINVAL, "%.200s is no list of labels: %.250s", path, why.text);
		return client_fail(&e);
	}
	_cleanup_(json_drop) json_t *a =
	    client_ask(json_pack("{s:s,s:o,s:s}", "do", "labels-take", "list", list, "key", key), &e);
	if (!a)
		return client_fail(&e);
	printf("%d label numbers of station %d are new here\n", (int)json_number(a, "labels", 0),
	       (int)json_number(a, "station", 0));
	return EXIT_OK;
}

int stock_labels(const char *write, const char *take, const char *key)
{
	return write ? write_list(write) : take_list(take, key);
}
