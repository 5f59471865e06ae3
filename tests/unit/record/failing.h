/* A world that fails once: the n-th call that this program makes of the C library, of SQLite or of a thread is refused.
 *
 * Linked with -Wl,--wrap (CMakeLists.txt names each call), so that it is what our own files call, and no library's inside.
 * What is refused has done nothing; a statement that was refused says so once more when it is reset or finalized.
 */
#ifndef BANDTALLY_TESTS_RECORD_FAILING_H
#define BANDTALLY_TESTS_RECORD_FAILING_H

/* `after` calls succeed, the next one fails, with `sqlite` where it is SQLite's and EIO where it is a file's. */
void failing_begin(int after, int sqlite);

/* Nothing fails any more. The name of the call that did, NULL none. */
const char *failing_end(void);

#endif
