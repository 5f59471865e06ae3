/* Why a paper does not come: the printer's program names it on its line to the station, behind "printer-" (labels/serve.h), and
 * the board says it in the room's language. Each says what to do. The form is that of sayings.h; no record holds these.
 */
#ifndef BANDTALLY_WORDS_PRINTER_WORDS_H
#define BANDTALLY_WORDS_PRINTER_WORDS_H

/* clang-format off */
#define PRINTER_WORDS(X, N) \
	X(PRINTER_OUT_OF_PAPER, "printer-out-of-paper", "the printer is out of paper: put paper in, it goes on by itself") \
	X(PRINTER_WANTS_PAPER, "printer-wants-paper", "the printer asks for paper: put paper in, it goes on by itself") \
	X(PRINTER_JAM, "printer-jam", "paper is jammed in the printer: clear it") \
	X(PRINTER_OPEN, "printer-open", "the printer is open: close it") \
	X(PRINTER_TONER, "printer-toner", "the printer is out of toner: change it") \
	X(PRINTER_INK, "printer-ink", "the printer is out of ink or ribbon: change it") \
	X(PRINTER_SILENT, "printer-silent", "the printer does not answer: check power, cable and network") \
	X(PRINTER_PAUSED, "printer-paused", "the queue is paused: let it go on (cupsenable)") \
	X(PRINTER_STOPPED, "printer-stopped", "the printer is stopped: look at its display") \
	X(PRINTER_BUSY, "printer-busy", "the printer is busy with another job: it is tried again") \
	X(PRINTER_SLOW, "printer-slow", "the printer has it and is not finished yet: look at the printer") \
	X(PRINTER_HELD, "printer-held", "the job is held: release it (lp -H resume)") \
	X(PRINTER_JOB_STOPPED, "printer-job-stopped", "the job is stopped: look at the printer") \
	X(PRINTER_TAKES_NONE, "printer-takes-none", "the printer does not accept jobs: let it accept them again (cupsaccept)") \
	X(PRINTER_NO_NUMBER, "printer-no-number", \
	  "the printer took it and gave it no number: look for the paper, and print again if it is not there") \
	X(PRINTER_FORGOT, "printer-forgot", \
	  "the printer no longer knows the job: look for the paper, and print again if it is not there") \
	X(PRINTER_ENDED, "printer-ended", \
	  "the printer ended the job without finishing it: look at the printer, then print again") \
	X(PRINTER_NOT_THERE, "printer-not-there", \
	  "there is no such queue or printer: check the printer's name in the settings") \
	X(PRINTER_NOT_READ, "printer-not-read", \
	  "what answers there cannot be read: see that the printer's address in the settings is right; if it is, print through a queue") \
	X(PRINTER_NO_PDF, "printer-no-pdf", "the printer takes no PDF: set up a queue for it that does") \
	X(PRINTER_REFUSES, "printer-refuses", "the printer refuses the job: ask whoever looks after printing") \
	X(PRINTER_KEEPS, "printer-keeps", \
	  "these are not wanted any more, and the printer does not give the job back: cancel it there, and tear up what comes out") \
	X(PRINTER_LABEL_SMALL, "printer-label-small", \
	  "it does not fit on these labels in a size that scanners read: put in larger ones and set labels.ini to them, or shorten the names; the journal says which size would do") \
	/* what the station says itself */ \
	X(PRINTER_NO_PROGRAM, "printer-no-program", "the printer's program does not run: tell whoever looks after the station") \
	X(PRINTER_NOT_MADE, "printer-not-made", "the paper cannot be made: tell whoever looks after the station; the journal says why") \
	X(PRINTER_NOT_KEPT, "printer-not-kept", \
	  "the file cannot be put into its folder: tell whoever looks after the station; the journal says why") \
	X(PRINTER_NOT_KNOWN, "printer-not-known", \
	  "the station was started anew and does not know whether they came out: look for them") \
	X(PRINTER_OTHER, "printer-other", "it did not come: tell whoever looks after the station; the journal says why")
/* clang-format on */

#endif
