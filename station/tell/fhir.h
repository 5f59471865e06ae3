/* A case as HL7 FHIR R4 (4.0.1), for a hospital's own systems: a Bundle (collection) of
 *
 *   Procedure           the case; its number is an identifier of the procedure, never of the patient
 *   Device              the station; and each tourniquet, with the item number or what its maker's code said
 *   Observation         minutes of each stretch on a digit (UCUM), '>=' where they are at least so many
 *   DocumentReference   what was signed, as exactly those bytes
 *   Provenance          the signature on that document and on nothing else: it covers no other
 *
 * The subject is by display alone: no patient is known here, and the hospital's systems put theirs in. Pure.
 */
#ifndef BANDTALLY_TELL_FHIR_H
#define BANDTALLY_TELL_FHIR_H

#include "base/json.h"
#include "tell/story.h"

/* Identifier systems, each a URI of the hospital's. */
#define FHIR_SYSTEMS(X) X(record) X(station) X(case_number) X(item) X(slip)
struct fhir_systems {
#define X(name) char name[200];
	FHIR_SYSTEMS(X)
#undef X
};

struct fhir_source {
	const struct story *story;
	const struct event *events; /* of the case, as the story was made of */
	int count;
	const struct fhir_systems *systems;
	const char *site, *site_name; /* letters; name, or "" */
	struct moment made;           /* the Bundle's own time */
	/* Compact JWS whose payloads become documents, with what each is; of slips as they were read. */
	const char *const *jws;
	const char *const *what;
	int n_jws;
};

/* A new reference; NULL without memory, or where a JWS is none. Its numbers are not canonical (a minute has parts): write it
 * with json_dumps(). */
json_t *fhir_bundle(const struct fhir_source *from);

#endif
