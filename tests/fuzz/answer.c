/* Fuzzing what a printer answers: any bytes. */
#include <errno.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cups/ipp.h>

#include "labels/printer-answer.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static void must(int holds, const char *what)
{
	if (holds)
		return;
	fprintf(stderr, "fuzz: %s\n", what);
	abort();
}

static void look_at_jobs(const struct buf *answer)
{
	struct job_said said;
	size_t before = 0;
	for (size_t at = 0; answer_next_job(answer, &at, "bandtally slip 000001 copy 1", &said);
	     before = at) {
		must(at > before && at < answer->size, "a job after which the next does not come");
		must(said.id >= 0, "a job's number");
		must(said.state == 0 ||
		         (said.state >= IPP_JSTATE_PENDING && said.state <= IPP_JSTATE_COMPLETED),
		     "a job's state");
		must(said.named || !said.ours, "a job without a name is ours");
		must(!said.ours ||
		         memmem(answer->data, answer->size, "bandtally slip 000001 copy 1", 28) != NULL,
		     "a job is ours that does not bear the title");
	}
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	struct buf answer = {.data = (char *)(uintptr_t)data, .size = size}; /* only read */
	struct printer_said printer;
	int status = answer_status(&answer);
	must(status == -EPROTO || (status >= 0 && status <= 0xffff), "a status");
	if (status < 0)
		return 0;
	must(size > 8 && memchr(data + 8, IPP_TAG_END, size - 8) != NULL, "a whole answer without an end");
	look_at_jobs(&answer);
	answer_printer(&answer, "iso_a5_148x210mm", &printer);
	must(!printer.trouble || strstr(saying_text(printer.trouble), ": ") != NULL,
	     "the trouble is no sentence");
	return 0;
}
