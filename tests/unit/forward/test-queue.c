/* Events on the pipe and in the queue: whole, in order, and in PostgreSQL's own form. */
#include <arpa/inet.h>
#include <errno.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "forward/queue.h"
#include "words/said.h"

#define HASH "00112233445566778899aabbccddeeff00112233445566778899aabbccddeeff"
#define LINE(text, seq) "{\"event\":" text ",\"hash\":\"" HASH "\",\"seq\":" seq "}"

static int is_event(const char *line, struct line_event *e)
{
	return line_event(line, strlen(line), e);
}

static void an_event_is_taken_out_of_its_line_to_the_byte(void **state)
{
	struct line_event e;
	(void)state;
	assert_int_equal(is_event(LINE("{\"a\":\",\\\"hash\\\":\"}", "17"), &e), 1);
	assert_int_equal(e.size, strlen("{\"a\":\",\\\"hash\\\":\"}"));
	assert_memory_equal(e.text, "{\"a\":\",\\\"hash\\\":\"}", e.size);
	assert_memory_equal(e.hash, HASH, LINE_HASH);
	assert_int_equal(e.seq, 17);
}

static void what_is_no_event_is_none(void **state)
{
	struct line_event e;
	static const char *const lines[] = {"",
	                                    "{}",
	                                    "{\"event\":",
	                                    LINE("{}", "0"),
	                                    LINE("{}", ""),
	                                    LINE("{}", "1x"),
	                                    "{\"v\":1,\"station\":{\"seq\":5}}",
	                                    "{\"event\":{},\"hash\":\"00\",\"seq\":1}",
	                                    LINE("{}", "12345678901234567890")};
	(void)state;
	for (size_t i = 0; i < sizeof lines / sizeof *lines; i++)
		if (is_event(lines[i], &e))
			fail_msg("%s is taken for an event", lines[i]);
}

static void add(struct queue *q, const char *text)
{
	struct line_event e = {.text = text, .size = strlen(text), .hash = HASH};
	assert_int_equal(queue_add(q, &e), 0);
}

static void a_batch_is_bounded_in_number_and_bytes_and_never_empty(void **state)
{
	struct queue q = {0};
	size_t texts, hashes;
	(void)state;
	queue_begin(&q, 40);
	add(&q, "one");
	add(&q, "three");
	add(&q, "five");
	assert_int_equal(queue_batch(&q, 2, 1000, &texts, &hashes), 2);
	assert_int_equal(texts, 4 + 3 + 4 + 5);
	assert_int_equal(hashes, 2 * (4 + HASH_BYTES));
	assert_int_equal(queue_batch(&q, 9, 4 + 3 + 4 + 5, &texts, &hashes), 2);
	assert_int_equal(queue_batch(&q, 9, 1, &texts, &hashes), 1);
	queue_drop(&q, 2);
	assert_int_equal(q.after, 42);
	assert_int_equal(q.count, 1);
	assert_int_equal(queue_batch(&q, 9, 1000, &texts, &hashes), 1);
	assert_int_equal(ntohl(*(uint32_t *)(void *)q.texts.data), 4);
	assert_memory_equal(q.texts.data + 4, "five", 4);
	assert_int_equal((unsigned char)queue_hash(&q, 0)[1], 0x11);
	queue_free(&q);
}

static void a_hash_that_is_none_changes_nothing(void **state)
{
	struct queue q = {0};
	struct line_event e = {.text = "x", .size = 1, .hash = "0g" HASH};
	(void)state;
	add(&q, "one");
	size_t texts = q.texts.size;
	assert_int_equal(queue_add(&q, &e), -EINVAL);
	assert_int_equal(q.count, 1);
	assert_int_equal(q.texts.size, texts);
	queue_free(&q);
}

static void every_word_has_its_sentence_and_is_found_by_its_name(void **state)
{
	(void)state;
	assert_string_equal(forward_word_name(FORWARD_NOTHING), "");
	for (int w = FORWARD_UNREACHABLE; w <= FORWARD_OTHER; w++) {
		assert_int_equal(forward_word_named(forward_word_name((enum forward_word)w)), w);
		assert_true(strlen(saying_english(saying_of_forward(w), 0)) > 40);
	}
	assert_int_equal(forward_word_named("no such"), FORWARD_NOTHING);
	assert_int_equal(forward_word_named(""), FORWARD_NOTHING);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(an_event_is_taken_out_of_its_line_to_the_byte),
	    cmocka_unit_test(what_is_no_event_is_none),
	    cmocka_unit_test(a_batch_is_bounded_in_number_and_bytes_and_never_empty),
	    cmocka_unit_test(a_hash_that_is_none_changes_nothing),
	    cmocka_unit_test(every_word_has_its_sentence_and_is_found_by_its_name),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
