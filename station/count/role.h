/* The kinds of item that are counted, as one list, and what the count must know of each.
 *
 * Nobody asks which kind a thing is; everybody asks for a trait, so that a further kind is one row here. The name is what
 * a catalogue's file and the record hold: it is never changed, and a new kind comes at the end (count/event-lists.h).
 */
#ifndef BANDTALLY_COUNT_ROLE_H
#define BANDTALLY_COUNT_ROLE_H

#include <stdint.h>

enum role_trait {
	TRAIT_TIMED = 1 << 0,     /* goes on a digit, whose clock it starts; its listing can be owed */
	TRAIT_CLAMPS = 1 << 1,    /* goes on a digit beside it */
	TRAIT_BY_NUMBER = 1 << 2, /* the pieces of a pack are one item with a number; else each is an item */
	TRAIT_CONDITION = 1 << 3, /* is accounted for by how it is (rule 10): its mark alone does not do it */
	TRAIT_CE = 1 << 4,        /* is catalogued only where it bears a regulator's mark (rule 5) */
	TRAIT_VISIBLE = 1 << 5,   /* is catalogued only where it is bright or tagged (rule 5) */
	TRAIT_LIST = 1 << 6,      /* is a list of others, which are counted in */
	TRAIT_REFUSED = 1 << 7,   /* is no tourniquet, and its line says what to use instead (rule 5) */
	TRAIT_SHARP = 1 << 8,     /* goes into its container once it is accounted for, which is said */

	TRAIT_ON_DIGIT = TRAIT_TIMED | TRAIT_CLAMPS,
};

/* X(NAME, "name", traits) */
#define ROLES(X)                                                                                             \
	/* finger or toe tourniquet */                                                                       \
	X(TOURNIQUET, "tourniquet", TRAIT_TIMED | TRAIT_CONDITION | TRAIT_CE | TRAIT_VISIBLE)                \
	X(FORCEPS, "forceps", TRAIT_CLAMPS)  /* artery forceps or what clamps the tourniquet */              \
	X(OTHER, "other", TRAIT_BY_NUMBER)   /* swabs and other accountable items */                         \
	X(TRAY, "tray", TRAIT_LIST)          /* instruments that come as one list */                         \
	X(REFUSED, "refused", TRAIT_REFUSED) /* glove finger, drain */                                       \
	X(NEEDLE, "needle", TRAIT_BY_NUMBER | TRAIT_SHARP)                                                   \
	X(BLADE, "blade", TRAIT_BY_NUMBER | TRAIT_SHARP)

enum role {
	ROLE_NONE = 0,
#define X(name, text, traits) ROLE_##name,
	ROLES(X)
#undef X
	    ROLE_KINDS
};

/* Whether things of this kind have any of these traits; ROLE_NONE and what is no kind have none. */
int role_has(uint32_t role, uint32_t traits);

const char *role_name(enum role role); /* "tourniquet" … as in a file; "unknown" for what is no kind */
int role_from_name(const char *name);  /* enum role or -EINVAL */

/* " tourniquet forceps …": the names, to say what a file may hold. */
#define ROLE_NAMED(name, text, traits) " " text
#define ROLE_NAMES ROLES(ROLE_NAMED)

#endif
