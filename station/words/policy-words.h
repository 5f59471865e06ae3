/* The points of the sign-out and the steps of the search as they are shipped (config/policy.ini), so that a room says them in
 * its language.
 *
 * The English is the text that the settings have and that events keep as it was put: it is the name by which a record knows
 * them (saying_of_shipped). So none is ever changed; one that is worded otherwise is a further row, and the earlier stays, in
 * the lists of what was shipped once. A site's own texts are said as the site wrote them. The form is that of sayings.h.
 */
#ifndef BANDTALLY_WORDS_POLICY_WORDS_H
#define BANDTALLY_WORDS_POLICY_WORDS_H

/* clang-format off */
#define POLICY_WORDS(X, N) \
	SHIPPED_POINTS(X) \
	SHIPPED_STEPS(X) \
	SHIPPED_ONCE(X)

#define SHIPPED_POINTS(X) \
	X(POINT_PROCEDURE, "point-procedure", "The name of the procedure is recorded.") \
	X(POINT_ITEMS, "point-items", \
	  "Tourniquets, forceps and all other items are accounted for, or not applicable.") \
	X(POINT_SPECIMEN, "point-specimen", \
	  "Each specimen is labelled with the patient's name, or there is none.") \
	X(POINT_EQUIPMENT, "point-equipment", "Equipment problems have been reported, or there are none.") \
	X(POINT_RECOVERY, "point-recovery", \
	  "Concerns for recovery have been handed over, colour and warmth of the digit among them.")

#define SHIPPED_STEPS(X) \
	X(STEP_ALOUD, "step-aloud", "say it aloud and stop closing") \
	X(STEP_COUNT, "step-count", "count again") \
	X(STEP_LOOK, "step-look", "look at and feel the digit, under the dressing too") \
	X(STEP_DRAPES, "step-drapes", "drapes, floor, shoes") \
	X(STEP_BINS, "step-bins", "bins and linen") \
	X(STEP_PATIENT, "step-patient", "under the patient") \
	X(STEP_SURGEON, "step-surgeon", "tell the surgeon, who looks as well") \
	X(STEP_IMAGING, "step-imaging", \
	  "imaging, if the missing item shows on it: steel does, a tourniquet may not") \
	X(STEP_CHARGE, "step-charge", "tell the nurse in charge") \
	X(STEP_INCIDENT, "step-incident", "incident report begun") \
	X(STEP_TOLD, "step-told", "patient told, or who will tell")

#define SHIPPED_ONCE(X) \
	X(STEP_COUNT_BOTH, "step-count-both", "count again, both together")
/* clang-format on */

#endif
