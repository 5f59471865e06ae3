/* One sentence for a person: what failed, why, and what to do.
 *
 * Functions return 0 or a positive, documented result on success and a negative errno on failure, which
 * callers pass on unchanged. Where a person will read about it, the function also takes a `struct error`
 * that the caller owns; it is written only on failure, always terminated, and may be NULL.
 */
#ifndef BANDTALLY_BASE_ERROR_H
#define BANDTALLY_BASE_ERROR_H

#define ERROR_TEXT_MAX 512

/* Where a negative errno was born: for the journal, and whoever reads it beside the source. */
struct origin {
	const char *file; /* "sheet-apply.c"; NULL not known. Never freed */
	int line;
};
/* The code, whose origin is this line; `at` NULL: nobody asks. return ERROR_AT(at, -EINVAL); */
#define ERROR_AT(at, code) origin_note((at), (code), __FILE_NAME__, __LINE__)
int origin_note(struct origin *at, int code, const char *file, int line);

struct error {
	int code;                  /* negative errno */
	struct origin at;          /* the call of error_set(), or what it was told of */
	char text[ERROR_TEXT_MAX]; /* "what: why: what to do", UTF-8 */
};

/* Writes the sentence and returns `code`, so that callers can write `return error_set(e, -EINVAL, …)`. */
#define error_set(e, code, ...) error_set_at((e), (code), __FILE_NAME__, __LINE__, __VA_ARGS__)
int error_set_at(struct error *e, int code, const char *file, int line, const char *format, ...)
    __attribute__((format(printf, 5, 6)));

/* Exit codes of every program (the manual pages list them). */
enum exit_code {
	EXIT_OK = 0,
	EXIT_FAILED = 1,   /* it could not be done; stderr says what, why, what to do */
	EXIT_USAGE = 2,    /* the words of the command are wrong */
	EXIT_REFUSED = 3,  /* scan: the station refused; status --idle: a case is open */
	EXIT_QUESTION = 4, /* scan: the station asks something first; setup: an answer is missing */
};

#define _cleanup_(f) __attribute__((cleanup(f)))

#endif
