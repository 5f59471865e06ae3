/* One job on its way to a printer, by IPP, through a CUPS queue or straight to ipp://….
 *
 * A print system can lose a job or print it twice and still report success, so nothing here claims paper:
 * DONE means 'the printer reports it done'. Whoever sends a job again first asks the printer for the job's
 * title, which names slip and copy; that also covers a request whose answer was lost.
 *
 * libcups blocks, so each step is bounded (exchange.h), whatever the printer does. Such a step ends in
 * WAITING with a sentence, and is tried again later. The PDF and the titles are the only things that leave:
 * no name, no identifier of a patient.
 */
#ifndef BANDTALLY_LABELS_SEND_H
#define BANDTALLY_LABELS_SEND_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "base/error.h"
#include "labels/paper.h"
#include "words/english.h"

enum job_state {
	JOB_NEW = 0,   /* nothing was sent yet */
	JOB_WRITTEN,   /* a PDF file */
	JOB_SENT,      /* the printer has it and has not finished */
	JOB_WAITING,   /* something must happen first; `text` says what. It is tried again */
	JOB_DONE,      /* the printer reports it done */
	JOB_FAILED,    /* it will not be printed unless somebody acts; `text` says what to do */
	JOB_WITHDRAWN, /* as it was asked to be: the printer has it no more */
};

const char *job_state_name(enum job_state state); /* "written" "sent" "waiting" "done" "failed" "withdrawn" */

#define PRINTER_MAX 256

struct printer { /* where a job goes; plain values */
	char uri[PRINTER_MAX], host[PRINTER_MAX], resource[PRINTER_MAX];
	int port;
	bool encrypted, queue;
};

struct job {
	int64_t id;
	struct printer printer;
	char title[PAPER_TITLE_MAX];
	char media[64];                    /* PWG name, "" where the printer's own size is right */
	json_t *document;                  /* the job's own, and what is made of it */
	const struct languages *languages; /* borrowed, for as long as the job is */
	struct buf pdf;
	int pages;
	int cups;        /* the printer's number for it, 0 not known */
	bool sent;       /* the printer took it */
	int64_t sent_ms; /* when, by CLOCK_BOOTTIME */
	bool look_first; /* it may have been sent before: ask, and do not send if the printer has it */
	bool unwanted;   /* nothing of it is to come any more: each step takes it back */
	enum job_state state;
	enum saying
	    why; /* what is in the way, as a room is told it: printer-words.h; SAY_NONE nothing, or of the job itself */
	char text[ERROR_TEXT_MAX]; /* the title and what became of it, in English */
};

/* Makes PDF, title and media from a document; the rest of the job is as it was. 0, or negative errno and one
 * sentence. */
int job_make(struct job *j, const struct languages *languages, const json_t *document, struct error *e);

/* Makes the PDF anew for a sheet that lies in the printer, where its own does not: media becomes that. Where the sheet has no
 * known size, or has room for none of the document's papers, nothing changes. */
void job_lay_on(struct job *j, const char *media);

/* Writes the PDF whole under that name or not at all: state WRITTEN, or FAILED with a sentence. */
void job_write(struct job *j, const char *path);
int job_may_write(const char *title, const char *path,
                  struct error *e); /* without writing it: 0 or negative errno */

void job_deinit(struct job *j);

/* A queue's name, or ipp:// or ipps:// with host and path. -EINVAL and one sentence. */
int printer_read(const char *text, struct printer *p, struct error *e);

/* Whether something answers there that knows that queue. 0; -ENOENT where there is none of that name, -EIO where nothing answers:
 * `name` is said in the sentence, as it was given. One that is stopped, busy or out of paper answers. */
int printer_reach(const struct printer *p, const char *name, struct error *e);

/* One step: sends, or asks how it goes on. Sets state, text and cups; returns true when state or text
 * changed. Takes up to 8 s when the printer hangs, and longer only while it goes on taking or sending bytes. Nothing happens once it is DONE, FAILED or WRITTEN. */
bool job_step(struct job *j);

bool job_is_over(const struct job *j);

#endif
