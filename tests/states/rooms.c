/* The rooms that are walked. */
#include "walk.h"

#define CARDS(...) ((const int[]){__VA_ARGS__, 0})

const struct room_plan rooms[] = {
    {"the least room: one tourniquet, one digit, three people", .tourniquets = 1, .digits = 1, .people = 3,
     .cards = CARDS(CARD_NEW_CASE, CARD_OFF, CARD_FINAL_COUNT, CARD_INTACT, CARD_NO)},
    {"the least room of a lone operator", .single = 1, .tourniquets = 1, .digits = 1, .people = 1,
     .cards = CARDS(CARD_OFF, CARD_INTACT, CARD_NO, CARD_YES, CARD_LOOKED_PATIENT, CARD_NEXT)},
    {"UNDO: one tourniquet, one forceps", .begin = BEGIN_TEAM, .no_time = 1, .tourniquets = 1, .forceps = 1,
     .items = 2, .digits = 1, .people = 2,
     .cards = CARDS(CARD_OFF, CARD_FINAL_COUNT, CARD_INTACT, CARD_YES, CARD_NO, CARD_UNDO)},
    {"NEXT between two equal answers", .begin = BEGIN_COUNTED, .no_time = 1, .tourniquets = 1, .forceps = 2,
     .digits = 1, .people = 2,
     .cards = CARDS(CARD_OFF, CARD_FINAL_COUNT, CARD_INTACT, CARD_YES, CARD_NO, CARD_NEXT)},
    {"scans that go wrong: used, expired, improvised, unknown, a wristband, another room's card",
     .begin = BEGIN_TEAM, .no_time = 1, .tourniquets = 1, .items = 1, .digits = 1, .people = 3, .refused = 1,
     .cards = CARDS(CARD_OFF, CARD_FINAL_COUNT, CARD_INTACT, CARD_YES, CARD_NO)},
    {"two digits: marked, wrong, moved, never on", .begin = BEGIN_TEAM, .no_time = 1, .tourniquets = 1,
     .items = 1, .digits = 2, .people = 2, .cards = CARDS(CARD_OFF, CARD_MISREAD, CARD_YES, CARD_NO)},
    {"two alike on one or two digits", .begin = BEGIN_COUNTED, .no_time = 1, .no_identity = 1, .items = 2,
     .digits = 2, .people = 2, .cards = CARDS(CARD_OFF, CARD_ADD, CARD_YES, CARD_NO)},
    {"not listed, listed late", .begin = BEGIN_TEAM, .no_time = 1, .tourniquets = 1, .items = 2, .digits = 1,
     .people = 2,
     .cards = CARDS(CARD_OFF, CARD_UNLISTED_TOURNIQUET, CARD_YES, CARD_NO, CARD_FINAL_COUNT, CARD_INTACT)},
    {"time: reminders, MINUTES AGO", .begin = BEGIN_COUNTED, .tourniquets = 1, .items = 1, .digits = 1,
     .people = 2,
     .cards = CARDS(CARD_OFF, CARD_5_MINUTES_AGO, CARD_YES, CARD_NO, CARD_FINAL_COUNT, CARD_INTACT)},
    {"forceps: moved, mark unreadable", .begin = BEGIN_TEAM, .no_time = 1, .tourniquets = 1, .forceps = 1,
     .items = 2, .digits = 1, .people = 2,
     .cards = CARDS(CARD_OFF, CARD_FORCEPS_MOVED, CARD_YES, CARD_NO, CARD_FINAL_COUNT, CARD_INTACT,
                    CARD_MARK_UNREADABLE)},
    {"handover", .begin = BEGIN_ON, .no_time = 1, .tourniquets = 1, .items = 1, .digits = 1, .people = 4,
     .cards =
         CARDS(CARD_HANDOVER, CARD_WITHOUT_FULL_SIGHT, CARD_OFF, CARD_FINAL_COUNT, CARD_INTACT, CARD_NO)},
    {"visitor: at the field, watching, operating", .no_time = 1, .tourniquets = 1, .items = 1, .digits = 1,
     .people = 2,
     .cards =
         CARDS(CARD_NEW_CASE, CARD_VISITOR_1, CARD_OFF, CARD_FINAL_COUNT, CARD_INTACT, CARD_YES, CARD_NO)},
    {"both badges, interrupted", .begin = BEGIN_TEAM, .no_time = 1, .tourniquets = 1, .items = 1, .digits = 1,
     .people = 3, .both_badges = 1,
     .cards = CARDS(CARD_OFF, CARD_FINAL_COUNT, CARD_INTACT, CARD_YES, CARD_NO, CARD_INTERRUPTED)},
    {"pieces, search, found, unresolved", .begin = BEGIN_COUNTED, .no_time = 1, .tourniquets = 1,
     .forceps = 1, .items = 2, .digits = 1, .people = 3,
     .cards = CARDS(CARD_OFF, CARD_FINAL_COUNT, CARD_INTACT, CARD_PIECES_MISSING, CARD_CUT_AND_COMPLETE,
                    CARD_NO, CARD_YES, CARD_STEP_DONE, CARD_NOT_DONE, CARD_FOUND, CARD_END_UNRESOLVED)},
    {"cancelled, suspended, the patient leaves", .no_time = 1, .tourniquets = 1, .items = 1, .digits = 1,
     .people = 2,
     .cards = CARDS(CARD_NEW_CASE, CARD_CANCEL, CARD_SUSPEND, CARD_PATIENT_LEAVES, CARD_OFF, CARD_FINAL_COUNT,
                    CARD_INTACT, CARD_YES, CARD_NO)},
    {"sign-out points one by one", .begin = BEGIN_COUNTED, .no_time = 1, .tourniquets = 1, .items = 1,
     .digits = 1, .people = 3, .one_by_one = 1,
     .cards = CARDS(CARD_OFF, CARD_FINAL_COUNT, CARD_INTACT, CARD_YES, CARD_NO, CARD_INTERRUPTED,
                    CARD_DRESSING_ALREADY_ON)},
    {"a lone operator who searches", .single = 1, .begin = BEGIN_TEAM, .no_time = 1, .tourniquets = 1,
     .forceps = 1, .items = 2, .digits = 1, .people = 1,
     .cards = CARDS(CARD_OFF, CARD_INTACT, CARD_NO, CARD_YES, CARD_LOOKED_PATIENT, CARD_LOOKED_NOBODY,
                    CARD_STEP_DONE, CARD_NOT_DONE, CARD_FOUND, CARD_END_UNRESOLVED)},
    {"a lone operator: misread, not listed, UNDO", .single = 1, .begin = BEGIN_TEAM, .no_time = 1,
     .tourniquets = 1, .items = 1, .digits = 1, .people = 1,
     .cards = CARDS(CARD_OFF, CARD_INTACT, CARD_NO, CARD_YES, CARD_LOOKED_PATIENT, CARD_MISREAD,
                    CARD_FINAL_COUNT, CARD_UNLISTED_TOURNIQUET, CARD_UNDO)},
    {"swabs by their number", .begin = BEGIN_TEAM, .no_time = 1, .others = 1, .people = 3,
     .cards = CARDS(CARD_ADD, CARD_FINAL_COUNT, CARD_SHOWN_1, CARD_SHOWN_2, CARD_SHOWN_3, CARD_YES, CARD_NO,
                    CARD_INTERRUPTED)},
    {"things alike, by their number", .begin = BEGIN_TEAM, .no_time = 1, .no_identity = 1, .items = 2,
     .people = 2,
     .cards =
         CARDS(CARD_ADD, CARD_FINAL_COUNT, CARD_SHOWN_1, CARD_SHOWN_2, CARD_NO, CARD_INTACT,
               CARD_CUT_AND_COMPLETE, CARD_PIECES_MISSING, CARD_STEP_DONE, CARD_FOUND, CARD_END_UNRESOLVED)},
    {"rolls on", .begin = BEGIN_TEAM, .no_time = 1, .rolls_on = 1, .items = 1, .digits = 1, .people = 3,
     .cards = CARDS(CARD_OFF, CARD_FINAL_COUNT, CARD_INTACT, CARD_YES, CARD_NO)},
    {"packs: returned, isolated, dropped, struck", .begin = BEGIN_TEAM, .no_time = 1, .tourniquets = 1,
     .others = 1, .items = 2, .people = 2,
     .cards = CARDS(CARD_RETURNED_UNOPENED, CARD_WRONG_NUMBER_IN_PACK, CARD_DROPPED, CARD_MISREAD, CARD_YES,
                    CARD_NO, CARD_FINAL_COUNT, CARD_INTACT)},
    {"offcuts", .begin = BEGIN_TEAM, .no_time = 1, .tourniquets = 1, .items = 1, .digits = 1, .people = 2,
     .cards = CARDS(CARD_OFFCUT, CARD_OFF, CARD_YES, CARD_NO, CARD_FINAL_COUNT, CARD_CUT_AND_COMPLETE,
                    CARD_PIECES_MISSING, CARD_SHOWN_1)},
    {"no code", .begin = BEGIN_TEAM, .no_time = 1, .items = 2, .people = 2,
     .cards = CARDS(CARD_NO_CODE, CARD_YES, CARD_NO, CARD_FINAL_COUNT, CARD_INTACT)},
    {"stored scans: a digit and its OFF, OFF twice", .begin = BEGIN_TEAM, .no_time = 1, .tourniquets = 1,
     .items = 1, .digits = 1, .people = 2, .stored = 1,
     .cards = CARDS(CARD_OFF, CARD_YES, CARD_NO, CARD_FINAL_COUNT, CARD_INTACT)},
    {"two rooms, one tourniquet between them", .begin = BEGIN_TEAM, .no_time = 1, .tourniquets = 1,
     .items = 1, .digits = 1, .people = 2, .other_room = 1,
     .cards = CARDS(CARD_OFF, CARD_FINAL_COUNT, CARD_INTACT, CARD_YES, CARD_NO)},
};

/* By hand alone: these have no end within an hour. */
static const int cards_core[] = {CARD_YES, CARD_NO, CARD_OFF, CARD_FINAL_COUNT, CARD_INTACT, 0};
const struct room_plan deep_rooms[] = {
    {"two tourniquets, two forceps, two digits, three people, core cards", .tourniquets = 2, .forceps = 2,
     .digits = 2, .people = 3, .cards = cards_core},
    {"one tourniquet, one forceps, one digit, three people, every card", .tourniquets = 1, .forceps = 1,
     .digits = 1, .people = 3, .refused = 1},
};

/* What the rooms above do not reach: walked for the digest alone. */
static const int cards_team[] = {CARD_NEW_CASE,
                                 CARD_HANDOVER,
                                 CARD_WITHOUT_FULL_SIGHT,
                                 CARD_VISITOR_1,
                                 CARD_OFF,
                                 CARD_FINAL_COUNT,
                                 CARD_INTACT,
                                 CARD_NO,
                                 CARD_YES,
                                 CARD_INTERRUPTED,
                                 0};
static const int cards_end[] = {CARD_OFF,
                                CARD_FINAL_COUNT,
                                CARD_INTACT,
                                CARD_PIECES_MISSING,
                                CARD_CUT_AND_COMPLETE,
                                CARD_NO,
                                CARD_YES,
                                CARD_STEP_DONE,
                                CARD_NOT_DONE,
                                CARD_FOUND,
                                CARD_END_UNRESOLVED,
                                CARD_CANCEL,
                                CARD_SUSPEND,

                                CARD_PATIENT_LEAVES,
                                0};
static const int cards_moves[] = {CARD_OFF, CARD_MISREAD, CARD_5_MINUTES_AGO, CARD_FORCEPS_MOVED,
                                  CARD_YES, CARD_NO,      CARD_ADD,           CARD_UNLISTED_TOURNIQUET,

                                  0};
static const int cards_alone[] = {CARD_OFF,
                                  CARD_INTACT,
                                  CARD_NO,
                                  CARD_YES,
                                  CARD_LOOKED_PATIENT,
                                  CARD_LOOKED_NOBODY,
                                  CARD_STEP_DONE,
                                  CARD_NOT_DONE,
                                  CARD_FOUND,
                                  CARD_END_UNRESOLVED,

                                  CARD_MISREAD,
                                  CARD_FINAL_COUNT,
                                  CARD_UNLISTED_TOURNIQUET,
                                  0};
static const int cards_small[] = {CARD_NEW_CASE, CARD_OFF, CARD_FINAL_COUNT, CARD_INTACT,
                                  CARD_YES,      CARD_NO,  CARD_UNDO,        0};
static const int cards_least_alone[] = {CARD_OFF, CARD_INTACT, CARD_NO, CARD_LOOKED_PATIENT, 0};
static const int cards_late[] = {CARD_NEW_CASE, CARD_FINAL_COUNT, CARD_OFF, CARD_INTACT, CARD_YES, CARD_NO,
                                 CARD_MISREAD,  CARD_SUSPEND,     0};
static const int cards_numbers[] = {CARD_NEW_CASE, CARD_FINAL_COUNT,
                                    CARD_SHOWN_1,  CARD_SHOWN_3,
                                    CARD_MISREAD,  CARD_UNDO,
                                    CARD_NO,       CARD_WRONG_NUMBER_IN_PACK,
                                    CARD_YES,      0};
static const int cards_lots[] = {CARD_NEW_CASE, CARD_RETURNED_UNOPENED, CARD_MISREAD, CARD_ADD,
                                 CARD_DROPPED,  CARD_FINAL_COUNT,       CARD_INTACT,  0};
static const int cards_search[] = {CARD_FINAL_COUNT, CARD_OFF,      CARD_INTACT,         CARD_NO,
                                   CARD_STEP_DONE,   CARD_NOT_DONE, CARD_FOUND,          CARD_ADD,
                                   CARD_MISREAD,     CARD_YES,      CARD_END_UNRESOLVED, 0};

const struct room_plan digest_rooms[] = {
    {"a lone operator, two digits", .single = 1, .tourniquets = 2, .digits = 2, .people = 1,
     .cards = cards_least_alone},
    {"a lone operator, two digits, one tourniquet not listed", .single = 1, .tourniquets = 1, .digits = 2,
     .people = 1, .cards = cards_alone},
    {"a lone operator, one forceps, no digit", .single = 1, .forceps = 1, .people = 1, .cards = cards_alone},
    {"the right thumb", .thumb = 1, .tourniquets = 1, .digits = 1, .people = 3, .cards = cards_end},
    {"two tourniquets, two forceps, two digits", .tourniquets = 2, .forceps = 2, .digits = 2, .people = 2,
     .cards = cards_moves},
    {"two lots, no number on the item", .two_lots = 1, .people = 2, .cards = cards_lots},
    {"a size that is stated", .size = 1, .tourniquets = 1, .digits = 1, .people = 2, .cards = cards_core},
    {"badges: in charge, withdrawn; both badges", .tourniquets = 1, .digits = 1, .people = 4, .charge = 1,
     .withdrawn = 1, .both_badges = 1, .cards = cards_team},
    {"badges at the end: in charge, withdrawn", .tourniquets = 1, .digits = 1, .people = 3, .charge = 1,
     .withdrawn = 1, .cards = cards_end},
    {"a lone operator who searches", .single = 1, .tourniquets = 1, .digits = 1, .people = 1,
     .cards = cards_search},
    {"answers that come later", .tourniquets = 1, .digits = 1, .people = 2, .later = 1, .cards = cards_late},
    {"forceps of an earlier case, two copies of a slip", .tourniquets = 1, .forceps_again = 1, .copies = 1,
     .digits = 1, .people = 3, .cards = cards_small},
    {"isolated and struck while it is counted", .others = 1, .tourniquets = 1, .people = 2,
     .cards = cards_numbers},
};

const size_t n_rooms = sizeof rooms / sizeof *rooms;
const size_t n_deep_rooms = sizeof deep_rooms / sizeof *deep_rooms;
const size_t n_digest_rooms = sizeof digest_rooms / sizeof *digest_rooms;
