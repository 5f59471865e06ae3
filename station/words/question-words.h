/* What a question asks, as the board says it (sayings.h says how the lists are written). */
#ifndef BANDTALLY_WORDS_QUESTION_WORDS_H
#define BANDTALLY_WORDS_QUESTION_WORDS_H

/* clang-format off */
/* What is asked (count/sheet.h), without its deeds. */
#define SAYINGS_QUESTIONS(X, N) \
	X(ASK_OFF, "ask-off", "Is it off?") \
	X(ASK_IS_ON, "ask-is-on", "Is a tourniquet on it now?") \
	X(ASK_WHICH_OFF, "ask-which-off", "Which digit is it off?") \
	X(ASK_ROLLS_ON, "ask-rolls-on", \
	  "It rolls on. Open wound, flap, infection or tumour on the digit it is for?") \
	X(ASK_RIGHT_DIGIT, "ask-right-digit", "Not the marked digit. Is this the right digit?") \
	X(ASK_MOVE_TO, "ask-move-to", "What was misread?") \
	X(ASK_ADD, "ask-add", "What is added?") \
	X(ASK_RETURNED, "ask-returned", "What goes back unopened?") \
	X(ASK_ISOLATE, "ask-isolate", "Do not top it up. Which pack is it?") \
	X(ASK_DROPPED, "ask-dropped", "What was dropped?") \
	X(ASK_NO_CODE, "ask-no-code", "Is it a finger or toe tourniquet?") \
	X(ASK_EXTRA, "ask-extra", "Was it opened in this case?") \
	X(ASK_FOUND, "ask-found", "What was found?") \
	X(ASK_CANCEL, "ask-cancel", "Cancel this case?") \
	X(ASK_WHO_LOOKED, "ask-who-looked", "Who else looked at the bare digit?") \
	X(ASK_POINT, "ask-point", "Sign-out point") \
	X(ASK_HANDOVER_OUT, "ask-handover-out", "Who hands over?") \
	X(ASK_HANDOVER_IN, "ask-handover-in", "Who takes over?") \
	X(ASK_HANDOVER_SEEN, "ask-handover-seen", "See the tourniquet on it") \
	X(ASK_HANDOVER_AGREE, "ask-handover-agree", "Count aloud together what is on the sheet") \
	X(ASK_SURGEON_ENDS, "ask-surgeon-ends", "The surgeon decides to end unresolved") \
	X(ASK_INCIDENT, "ask-incident", "Incident report") \
	X(ASK_VISITOR, "ask-visitor", "Write the visitor's name on the paper sheet") \
	X(ASK_LEAVES, "ask-leaves", "Does the patient leave the room now?") \
	X(ASK_FIELD_TOO, "ask-field-too", "Both badges are needed here") \
	X(ASK_VISITOR_IS_SURGEON, "ask-visitor-is-surgeon", "Is the visitor the operating surgeon?") \
	X(ASK_WITNESS, "ask-witness", "The visiting surgeon signs; the circulating badge is the witness") \
	X(ASK_COUNTED_IN, "ask-counted-in", "Is the pack in your hand counted in already?") \
	X(ASK_SLIP_HERE, "ask-slip-here", \
	  "This slip is of another room. Is this paper in your hand here?") \
	X(ASK_STORED, "ask-stored", "Were the stored scans made in this room?") \
	X(ASK_TWICE, "ask-twice", "The same code came more than once in a row. Was that meant?") \
	X(ASK_LISTED_ALREADY, "ask-listed-already", \
	  "Is that the pack of a tourniquet that is listed already?") \
	X(ASK_HERE_NOW, "ask-here-now", "Is that pack in your hand here, unused?") \
	X(ASK_HANDOVER_STAYS, "ask-handover-stays", "Who stays, of the two who count?")
/* clang-format on */

#endif
