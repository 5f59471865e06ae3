/* The arithmetic that catches a misread character. Each function is pure and takes its text by length.
 *
 *                catches                                  does not catch
 *   mod 10       every single digit                       a swap of neighbours that differ by 5 (16 <-> 61)
 *   HIBC mod 43  every single character                   any swap: it is a plain sum
 *   MOD 97-10    every single character, every swap       1 in 97 of anything else
 *   GS1 pair     every single character, every swap       1 in 1021 of anything else
 */
#ifndef BANDTALLY_CODE_CHECK_DIGIT_H
#define BANDTALLY_CODE_CHECK_DIGIT_H

#include <stdbool.h>
#include <stddef.h>

/* GS1 General Specifications, 'check digit calculation': from the right, weights 3, 1, 3, 1 …; the digit that
 * fills the sum up to a multiple of 10. `size` digits without the check digit -> '0'..'9', 0 where one is no
 * digit. */
char check_mod10(const char *digits, size_t size);

/* ANSI/HIBC 2.6: sum of values modulo 43 over 0-9 A-Z - . space $ / + %, the character of that value. 0 where
 * a character is outside this set. */
char check_mod43(const char *text, size_t size);

/* ISO/IEC 7064 MOD 97-10 with letters as A=10 … Z=35 (ISO 13616 IBAN, ISO 17442 LEI). The text including its
 * two check digits is right when this is 1; check digits of a text without them are 98 - check_mod97(text
 * "00"). -1 where a character is neither digit nor capital letter, or the text is empty. */
int check_mod97(const char *text, size_t size);

/* GS1 General Specifications, 'check character pair' of (8013) and (8014): prime weights modulo 1021 over
 * character set 82, two characters of a set of 32. False where a character is outside set 82, or with more
 * than 97 characters (the weights are the primes from 2 to 509). */
bool check_pair(const char *text, size_t size, char pair[2]);

#endif
