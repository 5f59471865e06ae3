/* bandtally-print as a child of the daemon: job lines in, state lines out.
 *
 *   in   {"v":1,"job":{"id":7,"to":{"pdf":"/path/file.pdf"},"document":{…}}}
 *        {"v":1,"job":{"id":7,"to":{"printer":"slips"},"document":{…},"again":{"cups":123}}}
 *        {"v":1,"withdraw":{"id":7}}                       nothing of it is to come any more: what a printer still has of it
 *                          is cancelled there, until it is "withdrawn", or was "done" before; nothing of a job that is over
 *        {"v":1,"picture":{"id":"t3","document":{…}}}      a label for a screen: nothing is printed
 *   out  {"v":1,"job":{"id":7,"state":"sent","cups":123,"pages":1,"text":"…"}}
 *        {"v":1,"job":{"id":7,"state":"waiting","cups":123,"pages":1,"text":"…","why":"out-of-paper"}}
 *                          text: in English; why: the sentence that a room is told (words/printer-words.h), where there is one
 *        {"v":1,"picture":{"id":"t3","pictures":[…]}}       or "fault" in it (labels/pictures.h)
 *        {"v":1,"fault":{"code":"line","text":"…"}}        a line that names no job
 *
 * The program is confined first (labels/print-confined.h): it starts no other, and writes files beneath one folder alone.
 *
 * 'to' is a file, or a queue's name or ipp:// address. 'again' says that the job was sent before, as the
 * printer's job 123, or with 0 that its number was never learnt: the printer is asked first and the job is
 * not sent if it has it. States: written done failed withdrawn are the last word on a job; sent and waiting are not. A
 * line is at most 1 MiB. No line, however bad, ends the program; the end of input does, after ten more
 * seconds at most for jobs that are on their way.
 *
 * One job at a time: a printer that hangs holds the others up for 8 s, then they go on and it is asked again
 * after a while that grows to 15 s.
 */
#ifndef BANDTALLY_LABELS_SERVE_H
#define BANDTALLY_LABELS_SERVE_H

#include "words/languages.h"

int serve(int in, int out,
          const struct languages
              *languages); /* 0 at the end of input, or negative errno when `out` cannot be written */

#endif
