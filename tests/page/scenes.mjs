// Views as the daemon sends them (station/tell/view.h), one for each state that a person may meet. Invented data.
const numbers = { 'STEP DONE': 60 };
const cards = (...words) => words.map((w, i) => ({ number: numbers[w] ?? i + 1, words: w }));
const deed = (card, truth, words = '') => ({ kind: 'card', truth, words, card });
const item = (number, name, role, place, more = {}) => ({
	number, name, lot: 'L2207', identity: '', role, place, condition: '', pieces: 1, shown: 0, missing: 0, digit: 0,
	dropped: false, unlisted: false, added: false, ...more,
});
const digit = (number, name, state, more = {}) => ({
	number, name, state, text: '', on_at: '10:12', stretch_ms: 0, total_ms: 0, longest_ms: 0, marked: false, seen_bare: false,
	reminded: false, gap: false, forceps: false, next_reminder_min: 0, ...more,
});
const debt = (name, next = false) => ({ name: `debt-${name}`, next });
export const min = (n) => n * 60000 + 5000;

const tourniquet = (place, more) => item(1, 'Finger tourniquet, ring, medium', 'tourniquet', place, more);
const forceps = (place, more) => item(2, 'Artery forceps', 'forceps', place, more);
const field = { place: 'field', name: 'SCRUB-1' }, circulating = { place: 'circulating', name: 'CIRC-2' };

export const points = [
	'The name of the procedure is recorded.',
	'Tourniquets, forceps and all other items are accounted for, or not applicable.',
	'Each specimen is labelled with the patient\'s name, or there is none.',
	'Equipment problems have been reported, or there are none.',
	'Concerns for recovery have been handed over, colour and warmth of the digit among them.',
];
const steps = [
	'say it aloud and stop closing', 'count again', 'look at and feel the digit, under the dressing too',
	'drapes, floor, shoes', 'bins and linen', 'under the patient', 'tell the surgeon, who looks as well',
	'imaging, if the missing item shows on it: steel does, a tourniquet may not', 'tell the nurse in charge', 'incident report begun',
	'patient told, or who will tell',
];
export const search = (done, ...not) => steps.map((text, i) => ({ text, state: i >= done ? 'open' : not.includes(i + 1) ? 'not-done' : 'done' }));
const stepDeeds = [deed('STEP DONE', 'step-done'), deed('NOT DONE', 'step-not-done'), deed('FOUND', 'found', 'when what is missing is in your hand')];

export function view(more = {}, theCase = {}) {
	return {
		v: 1, at_ms: 1795602240000, utc_min: 0, room: { number: 1, name: 'Theatre 1', single: false }, site: 'Example Hospital', distrust: '', stopped: false, waits: [],
		case: {
			number: 41, single: false, initial_agreed: true, final: 'none', discrepancy: false, cancelled: false,
			patient_left: false, dressing_on: false, sign_out: false, points_yes: 0, point_no: 0, ...theCase,
		},
		practice: false, suspended_case: 0, ended: null, after: [], next: '', question: '', asked_digit: 0, cards: [], deeds: [], may_be_on: [], items: [], asked_item: 0, digits: [],
		team: [field, circulating], agreed: [], debts: [], search: [], points, recent: [], slips: [], owed: [], awake: false, faults: [],
		last_scan_ms: more.recent?.[0]?.ago_ms ?? null, elsewhere: [], clock: '', ...more,
	};
}
const scan = (ago_ms, verdict, said) => ({ ago_ms, verdict, said });
export const status = (more = {}) => ({
	v: 1, site: 'BC', site_name: 'Example Hospital', events: 4107, open_cases: 1, last_case: 41, lines: 12, staff: 9,
	distrust: '', stopped: false, waits: [], printer: 'theatre-slips', rooms: [{ number: 1, name: 'Theatre 1', case: 41 }, { number: 2, name: 'Theatre 2', case: 0 }],
	slips: [], owed: [], faults: [], elsewhere: [], clock: '', cases: [
		{ case: 41, room: 'Theatre 1', opened: '10:05', ended: '', outcome: 'open' },
		{ case: 40, room: 'Theatre 2', opened: '09:12', ended: '09:58', outcome: 'reconciled' },
		{ case: 38, room: 'Theatre 1', opened: '08:03', ended: '09:20', outcome: 'unresolved' },
	], ...more,
});

const onIndex = digit(2, 'right index finger', 'on', { stretch_ms: min(12), next_reminder_min: 20, forceps: true, marked: true });
const bothOn = [tourniquet('on', { digit: 2 }), forceps('on', { digit: 2 })];
const agreed = ['initial', 'final'].map((count, i) => ({ count, at: ['10:10', '10:40'][i], field: 'SCRUB-1', circulating: 'CIRC-2', recorded: 'CIRC-2' }));
const whenOff = { cards: [], deeds: [{ kind: 'digit', truth: 'off', words: '', digit: '', then: 'OFF' }] };
const shownOrNot = cards('INTACT', 'CUT AND COMPLETE', 'PIECES MISSING', 'NO');

const now_ms = 1795602240000, day_ms = 86400000;
const slipsOf = (...cases) => cases.map((c, i) => ({ number: 1000 + c, case: c, room: 1, copy: 1, kind: i % 2 ? 'discrepancy' : 'reconciliation', state: 'sent', since_ms: now_ms - (42 - c) * day_ms }));
const owedOf = (...cases) => cases.map((c) => ({ case: c, since_ms: now_ms - (42 - c) * day_ms }));
const afterUnresolved = [['digit-seen-bare', 2], ['digit-seen-bare', 9], ['ward-told', 0]].map(([what, digit]) => ({ case: 40, what, digit, at: '10:20' }));
export const scenes = {
	idle: view({ case: null, next: 'Next patient: scan NEW CASE.', cards: cards('NEW CASE'), team: [] }),
	'idle-slip': view({
		case: null, team: [], cards: cards('NEW CASE'),
		next: 'The paper: scan the code on the slip when it is in your hand; NEW CASE for the next patient.',
		ended: { case: 41, outcome: 'reconciled', at: '10:43', ago_ms: 8000 },
		slips: [{ number: 1043, case: 41, room: 1, copy: 1, kind: 'reconciliation', state: 'reported done', since_ms: 1795602230000 }], owed: [{ case: 38, since_ms: 1795602240000 - 12 * 86400000 }],
		recent: [scan(8000, 'accepted', 'Case 41 ended reconciled. Finger tourniquet, ring, medium: 1 of 1 shown intact. Seen bare: right index finger.')],
	}),
	'counting-in': view({
		next: 'Count in: scan each pack and instrument; the circulating badge when both have counted aloud.', cards: [],
		items: [tourniquet('here'), forceps('here')],
		recent: [scan(4000, 'accepted', 'Counted in: Artery forceps. It bears no number of its own: the station cannot tell it from another.'), scan(19000, 'accepted', 'Counted in: Finger tourniquet, ring, medium (lot L2207, expires 30 Apr 2028).')],
	}, { initial_agreed: false }),
	refused: view({
		next: 'Count in: scan each pack and instrument; CANCEL if there is no operation.', cards: cards('CANCEL'),
		recent: [scan(1000, 'refused', 'Not counted in: Finger tourniquet, ring, medium expired on 31 Oct 2026: take it off the field and use another. If it is already on the digit, scan UNLISTED TOURNIQUET.')],
	}, { initial_agreed: false }),
	on: view({
		next: 'When the tourniquet is off the right index finger: scan its digit card, then OFF.', ...whenOff, items: bothOn, digits: [onIndex],
		recent: [scan(min(12), 'accepted', 'Tourniquet on, right index finger, from 10:12; forceps on it. The clock runs.')],
	}),
	practice: view({
		practice: true, next: 'When the tourniquet is off the right index finger: scan its digit card, then OFF.', ...whenOff, items: bothOn, digits: [onIndex],
		recent: [scan(4000, 'accepted', 'Practice: Tourniquet on, right index finger, from 10:12; forceps on it. The clock runs.')],
	}),
	question: view({
		next: 'Right index finger: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.', question: 'off', asked_digit: 2, cards: cards('OFF', 'NO', 'ADD'), items: bothOn, digits: [onIndex],
		recent: [scan(2000, 'question', 'Tourniquet on the right index finger for 12 min.'), scan(min(12), 'accepted', 'Tourniquet on, right index finger, from 10:12; forceps on it. The clock runs.')],
	}),
	'maybe-on': view({
		next: 'Left great (big) toe: Is a tourniquet on it now? Scan YES; NO if none is on it.', question: 'is-on', asked_digit: 16, cards: cards('YES', 'NO'),
		items: [tourniquet('here')], digits: [digit(16, 'left great (big) toe', 'maybe-on', { stretch_ms: 70000 })],
		debts: [debt('on')], recent: [scan(70000, 'question', 'Is a tourniquet on it now? Scan YES or NO.')],
	}),
	'debts-faults': view({
		next: 'Still to do: the initial count, not agreed before the tourniquet went on: scan the circulating badge when it was counted aloud.', cards: [], items: bothOn, digits: [{ ...onIndex, gap: true }],
		debts: [debt('count', true), debt('listing')],
		faults: ['Scanner hall-1 of Theatre 1: it was unplugged: plug it in, or scan THIS ROOM with another'], suspended_case: 40,
		recent: [scan(45000, 'accepted', 'Tourniquet on, right index finger, from 10:12; forceps on it. The clock runs.')],
	}, { initial_agreed: false }),
	reminder: view({
		next: 'Tourniquet on the right index finger for 21 min. Tell the surgeon, then: scan a badge.', cards: [], items: bothOn,
		digits: [{ ...onIndex, stretch_ms: min(21), reminded: true, next_reminder_min: 30 }], recent: [scan(min(21), 'accepted', 'Tourniquet on, right index finger, from 10:12; forceps on it. The clock runs.')],
	}),
	elsewhere: view({
		next: 'When the tourniquet is off the right index finger: scan its digit card, then OFF.', ...whenOff, items: bothOn, digits: [onIndex],
		elsewhere: [{ room: 3, text: 'Bay 3: left ring finger 41 min, no scan since 02:10', case: 0, reminded: true, nobody: true }],
		clock: 'The wall clock is wrong: 25 Nov 2026 07:16, though the record reaches to 25 Nov 2026 10:01. Read expiry dates aloud; have the clock set.',
		recent: [scan(min(12), 'accepted', 'Tourniquet on, right index finger, from 10:12; forceps on it. The clock runs.')],
	}),
	'two-digits': view({
		next: 'On: right index finger and left ring finger. When one is off: scan its digit card, then OFF.', ...whenOff,
		items: [...bothOn, item(3, 'Finger tourniquet, ring, medium', 'tourniquet', 'on', { digit: 9 })],
		digits: [onIndex, digit(9, 'left ring finger', 'on', { stretch_ms: min(3) })], recent: [scan(min(3), 'accepted', 'Tourniquet on, left ring finger, from 10:21; no forceps. The clock runs.')],
	}),
	'many-digits': view({
		next: 'On: right index finger, right middle finger, left ring finger and left great (big) toe. When one is off: scan its digit card, then OFF.', ...whenOff,
		items: [2, 3, 9, 14, 16].map((d, i) => item(i + 1, 'Finger tourniquet, ring, medium', 'tourniquet', 'on', { digit: d })),
		digits: [digit(2, 'right index finger', 'on', { stretch_ms: min(12) }), digit(3, 'right middle finger', 'on', { stretch_ms: min(2880) }), digit(9, 'left ring finger', 'on', { stretch_ms: min(3) }), digit(14, 'right fourth toe', 'off', { total_ms: min(31) }), digit(16, 'left great (big) toe', 'on', { stretch_ms: min(7), forceps: true })],
		recent: [scan(min(3), 'accepted', 'Tourniquet on, left ring finger, from 10:21; no forceps. The clock runs.')],
	}),
	'two-beside': view({
		next: 'On: right ring finger and right little finger. When one is off: scan its digit card, then OFF.', ...whenOff,
		items: [4, 5].map((d, i) => item(i + 1, 'Finger tourniquet, ring, medium', 'tourniquet', 'on', { digit: d })),
		digits: [digit(4, 'right ring finger', 'on', { stretch_ms: min(112), forceps: true }), digit(5, 'right little finger', 'on', { stretch_ms: min(98) })],
		recent: [scan(min(98), 'accepted', 'Tourniquet on, right little finger, from 10:21; no forceps. The clock runs.')],
	}),
	off: view({
		next: 'Before the dressing: scan FINAL COUNT.', cards: cards('FINAL COUNT'),
		items: [tourniquet('off', { digit: 2 }), forceps('here')], digits: [digit(2, 'right index finger', 'off', { total_ms: min(14), marked: true })],
		recent: [scan(3000, 'accepted', 'Off, right index finger, at 10:26, after 14 min. Off is not yet accounted for.')],
	}),
	'final-count': view({
		next: 'Show the Finger tourniquet, ring, medium: scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is not there; the digit card if it is on a digit.', asked_item: 1,
		cards: shownOrNot,
		items: [tourniquet('off', { digit: 2 }), forceps('accounted', { shown: 1 }), item(3, 'Scalpel handle no. 3', 'other', 'here', { pieces: 2, shown: 1 })],
		digits: [digit(2, 'right index finger', 'off', { total_ms: min(14), marked: true })], recent: [scan(2000, 'accepted', 'Final count, line by line.')],
	}, { final: 'asking' }),
	look: view({
		next: 'Look at the bare right index finger before the dressing: scan its digit card; NO if a tourniquet is on it.', cards: cards('NO'),
		items: [tourniquet('accounted', { digit: 2, shown: 1, condition: 'intact' }), forceps('accounted', { shown: 1 })],
		agreed, digits: [digit(2, 'right index finger', 'off', { total_ms: min(14), marked: true })], recent: [scan(2000, 'accepted', 'Final count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.')],
	}, { final: 'agreed' }),
	recount: view({
		next: 'Show the Finger tourniquet, ring, medium: scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is not there; the digit card if it is on a digit.', asked_item: 1,
		cards: shownOrNot,
		items: [tourniquet('off', { digit: 2 }), forceps('here')], search: search(1),
		digits: [digit(2, 'right index finger', 'off', { total_ms: min(14), marked: true })], recent: [scan(2000, 'accepted', 'Counting again, line by line.')],
		slips: [{ number: 1044, case: 41, room: 1, copy: 1, kind: 'discrepancy', state: 'sent' }],
	}, { final: 'asking', discrepancy: true }),
	'who-looked': view({
		room: { number: 1, name: 'Minor injuries 3', single: true }, next: 'Who else looked at the bare digit? Scan PATIENT, CARER, COLLEAGUE or NOBODY.', question: 'who-looked',
		cards: cards('WHO LOOKED: PATIENT', 'WHO LOOKED: CARER', 'WHO LOOKED: COLLEAGUE', 'WHO LOOKED: NOBODY'), team: [{ place: 'operator', name: 'OPERATOR-4' }],
		items: [tourniquet('accounted', { digit: 6, shown: 1, condition: 'intact' })], digits: [digit(6, 'left thumb', 'off', { total_ms: min(9), seen_bare: true })],
		recent: [scan(2000, 'question', 'Left thumb seen bare at 10:41.')],
	}, { single: true, final: 'agreed' }),
	'sign-out': view({
		next: 'Read the sign-out points aloud: scan the surgeon\'s badge if all are true; NO if one is not.', cards: cards('NO'),
		items: [tourniquet('accounted', { digit: 2, shown: 1, condition: 'intact' }), forceps('accounted', { shown: 1 })],
		digits: [digit(2, 'right index finger', 'off', { total_ms: min(14), seen_bare: true })], recent: [scan(2000, 'accepted', 'right index finger seen bare at 10:41.')],
	}, { final: 'agreed', sign_out: true }),
	'sign-out-no': view({
		next: 'Sign-out held: point 3 is NO. When it is resolved, the sign-out begins again: scan the surgeon\'s badge if all are true; NO if one is not.', cards: cards('NO'),
		items: [tourniquet('accounted', { digit: 2, shown: 1, condition: 'intact' })], digits: [digit(2, 'right index finger', 'off', { total_ms: min(14), seen_bare: true })],
		recent: [scan(2000, 'accepted', 'Sign-out held at point 3: Each specimen is labelled with the patient\'s name, or there is none.')],
	}, { final: 'agreed', sign_out: true, points_yes: 2, point_no: 3 }),
	discrepancy: view({
		next: 'Search 4 of 11: drapes, floor, shoes: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand.', cards: cards('STEP DONE', 'NOT DONE', 'FOUND'), deeds: stepDeeds,
		items: [tourniquet('off', { digit: 2, missing: 1 }), forceps('accounted', { shown: 1 })], search: search(3, 2), may_be_on: [2],
		digits: [digit(2, 'right index finger', 'off', { total_ms: min(14), marked: true })],
		recent: [scan(6000, 'accepted', 'Search step 3 done: look at and feel the digit, under the dressing too.'), scan(31000, 'accepted', 'NOT THERE: Finger tourniquet, ring, medium, 0 of 1. DISCREPANCY: say it aloud. The discrepancy slip prints now.')],
		slips: [{ number: 1044, case: 41, room: 1, copy: 1, kind: 'discrepancy', state: 'sent' }],
	}, { final: 'asking', discrepancy: true }),
	'full-sheet': view({
		next: 'When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.', cards: cards('FINAL COUNT'),
		items: [tourniquet('here'), ...['Artery forceps', 'Scalpel handle no. 3', 'Toothed forceps', 'Iris scissors', 'Needle holder', 'Skin hook, double', 'Towel clip', 'Gauze swab 10 × 10 cm', 'Suture needle 5-0', 'Suture needle 6-0', 'Bipolar tip'].map((n, i) => item(i + 2, n, 'other', i % 4 === 3 ? 'accounted' : 'here', { pieces: i === 7 ? 20 : 1 + (i % 3), dropped: i === 4, added: i === 9, shown: i === 1 ? 1 : 0 })),
			item(20, 'Gauze swab 10 × 10 cm', 'other', 'isolated', { pieces: 5 }), item(21, 'Finger tourniquet, ring, small', 'tourniquet', 'returned'), item(22, 'Nail elevator', 'other', 'extra')],
		recent: [scan(2000, 'accepted', 'Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.')],
	}),
	alone: view({
		agreed: [{ count: 'initial', at: '10:11', field: 'OPERATOR-4', circulating: '', recorded: 'OPERATOR-4' }],
		room: { number: 1, name: 'Minor injuries 3', single: true }, team: [{ place: 'operator', name: 'OPERATOR-4' }], awake: true,
		next: 'When the tourniquet is off the left thumb: scan its digit card, then OFF.', ...whenOff, items: [tourniquet('on', { digit: 6 })],
		digits: [digit(6, 'left thumb', 'on', { stretch_ms: min(4) })], recent: [scan(min(4), 'accepted', 'Tourniquet on, left thumb, from 10:12; from gloving. The clock runs.')],
	}, { single: true }),
	stopped: view({
		distrust: 'The station was stopped by its administrator with a case open.', stopped: true, next: 'Count by hand on the paper sheet.',
		items: bothOn, digits: [onIndex],
	}),
	waits: view({
		next: 'When it is off: scan the digit card, then OFF.', ...whenOff, items: bothOn, digits: [onIndex],
		waits: ['An update waits until no case is open.', 'A restart waits until no case is open.'],
	}),
	distrust: view({
		distrust: 'The disk is full: what is scanned now is not stored.', next: 'Count by hand on the paper sheet.', items: bothOn, digits: [onIndex],
		recent: [scan(2000, 'refused', 'Not stored: the disk is full. Count by hand on the paper sheet.')],
	}),
	'gap-long': view({
		next: 'When the tourniquet is off the other digit 1, described: scan its digit card, then OFF.', ...whenOff, items: [tourniquet('on', { digit: 21 })],
		digits: [digit(21, 'other digit 1, described', 'on', { stretch_ms: min(5760), gap: true })], recent: [],
	}),
	// A discrepancy at its fullest: two equal tourniquets were on two digits, one is missing; a scan is refused, and more waits.
	'discrepancy-two': view({
		next: 'Search 4 of 11: drapes, floor, shoes: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand.', cards: cards('STEP DONE', 'NOT DONE', 'FOUND'), deeds: stepDeeds,
		items: [tourniquet('accounted', { digit: 2, shown: 1, condition: 'intact' }), item(2, 'Finger tourniquet, ring, medium', 'tourniquet', 'off', { digit: 9, missing: 1 }), item(3, 'Artery forceps', 'forceps', 'accounted', { shown: 1 })],
		search: search(3, 2), may_be_on: [2, 9],
		digits: [digit(2, 'right index finger', 'off', { total_ms: min(14), marked: true }), digit(9, 'left ring finger', 'off', { total_ms: min(9) })],
		recent: [scan(1000, 'refused', 'OFF changes nothing: no tourniquet is on a digit. If one is on, scan its digit card.')],
		debts: [debt('name')], slips: slipsOf(41, 42, 39, 38, 37, 36),
	}, { final: 'asking', discrepancy: true }),
	// One is missing while another is still on: its minutes stand in the band of the search.
	'discrepancy-on': view({
		next: 'Search 1 of 11: say it aloud and stop closing: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand.', cards: cards('STEP DONE', 'NOT DONE', 'FOUND'), deeds: stepDeeds,
		items: [item(1, 'Finger tourniquet, ring, medium', 'tourniquet', 'off', { digit: 2, missing: 1 }), item(2, 'Finger tourniquet, ring, medium', 'tourniquet', 'on', { digit: 9 }), item(3, 'Artery forceps', 'forceps', 'accounted', { shown: 1 })],
		search: search(0), may_be_on: [2],
		digits: [digit(2, 'right index finger', 'off', { total_ms: min(14), marked: true }), digit(9, 'left ring finger', 'on', { stretch_ms: min(31) })],
		recent: [scan(1000, 'accepted', 'NOT THERE: Finger tourniquet, ring, medium, 1 of 2. DISCREPANCY: say it aloud. The discrepancy slip prints now.')],
	}, { final: 'asking', discrepancy: true }),
	'discrepancy-limbs': view({
		next: 'Search 1 of 11: say it aloud and stop closing: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand.', cards: cards('STEP DONE', 'NOT DONE', 'FOUND'), deeds: stepDeeds,
		items: [2, 9, 14, 16].map((d, i) => item(i + 1, 'Finger tourniquet, ring, medium', 'tourniquet', i ? 'off' : 'accounted', { digit: d, missing: +!!i, shown: +!i })),
		search: search(0), may_be_on: [2, 9, 14, 16],
		digits: [digit(2, 'right index finger', 'off', { total_ms: min(14) }), digit(9, 'left ring finger', 'off', { total_ms: min(9) }), digit(14, 'right fourth toe', 'off', { total_ms: min(31) }), digit(16, 'left great (big) toe', 'off', { total_ms: min(7) })],
		recent: [scan(1000, 'accepted', 'NOT THERE: Finger tourniquet, ring, medium, 1 of 4. DISCREPANCY: say it aloud. The discrepancy slip prints now.')],
	}, { final: 'asking', discrepancy: true }),
	'discrepancy-awake': view({
		awake: true, next: 'Search 4 of 11: drapes, floor, shoes: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand.', cards: cards('STEP DONE', 'NOT DONE', 'FOUND'), deeds: stepDeeds,
		items: [tourniquet('off', { digit: 2, missing: 1 }), forceps('accounted', { shown: 1 })], search: search(3), may_be_on: [2],
		digits: [digit(2, 'right index finger', 'off', { total_ms: min(14), marked: true })], recent: [scan(6000, 'accepted', 'Search step 3 done: look at and feel the digit, under the dressing too.')],
	}, { final: 'asking', discrepancy: true }),
	'search-complete': view({
		next: 'Each step of the search is answered: scan FOUND when what is missing is in your hand; END UNRESOLVED when the surgeon decides to end; FINAL COUNT to count again.', cards: cards('FOUND', 'END UNRESOLVED', 'FINAL COUNT'),
		items: [tourniquet('off', { digit: 2, missing: 1 }), forceps('accounted', { shown: 1 })], search: search(11, 8), may_be_on: [2],
		digits: [digit(2, 'right index finger', 'off', { total_ms: min(14), marked: true })], recent: [scan(6000, 'accepted', 'Search step 11 done: patient told, or who will tell.')],
	}, { final: 'asking', discrepancy: true }),
	'on-fresh': view({
		next: 'When the tourniquet is off the right index finger: scan its digit card, then OFF.', ...whenOff, items: bothOn, digits: [{ ...onIndex, stretch_ms: 4000 }],
		recent: [scan(4000, 'accepted', 'Tourniquet on, right index finger, from 10:12; forceps on it. The clock runs.')],
	}),
	'four-digits': view({
		next: 'On: right index finger, right middle finger, left ring finger and left great (big) toe. When one is off: scan its digit card, then OFF.', ...whenOff,
		items: [2, 3, 9, 16].map((d, i) => item(i + 1, 'Finger tourniquet, ring, medium', 'tourniquet', 'on', { digit: d })),
		digits: [digit(2, 'right index finger', 'on', { stretch_ms: min(21), reminded: true }), digit(3, 'right middle finger', 'on', { stretch_ms: min(18) }), digit(9, 'left ring finger', 'on', { stretch_ms: min(3) }), digit(16, 'left great (big) toe', 'on', { stretch_ms: min(7), forceps: true })],
		recent: [scan(min(3), 'accepted', 'Tourniquet on, left ring finger, from 10:21; no forceps. The clock runs.')],
	}),
	'one-note': view({ next: 'Before the dressing: scan FINAL COUNT.', cards: cards('FINAL COUNT'), items: [tourniquet('off', { digit: 2 }), forceps('here')], digits: [digit(2, 'right index finger', 'off', { total_ms: min(14) })], slips: slipsOf(38), recent: [scan(3000, 'accepted', 'Off, right index finger, at 10:26, after 14 min. Off is not yet accounted for.')] }),
	'six-notes': view({ next: 'Before the dressing: scan FINAL COUNT.', cards: cards('FINAL COUNT'), items: [tourniquet('off', { digit: 2 }), forceps('here')], digits: [digit(2, 'right index finger', 'off', { total_ms: min(14) })], debts: [debt('surgeon')], slips: slipsOf(38, 39, 40), owed: owedOf(37, 36), recent: [scan(3000, 'accepted', 'Off, right index finger, at 10:26, after 14 min. Off is not yet accounted for.')] }),
	'twelve-notes': view({ next: 'Before the dressing: scan FINAL COUNT.', cards: cards('FINAL COUNT'), items: [tourniquet('off', { digit: 2 }), forceps('here')], digits: [digit(2, 'right index finger', 'off', { total_ms: min(14) })], faults: ['Scanner hall-1 of Theatre 1: it was unplugged: plug it in, or scan THIS ROOM with another'], debts: [debt('listing'), debt('name')], slips: slipsOf(38, 39, 40, 35, 34, 33), owed: owedOf(37, 36, 31), recent: [scan(3000, 'accepted', 'Off, right index finger, at 10:26, after 14 min. Off is not yet accounted for.')] }),
	'idle-twelve-notes': view({ case: null, team: [], cards: cards('NEW CASE'), next: 'Next patient: scan NEW CASE.', slips: slipsOf(38, 39, 40, 35, 34, 33, 32, 30), owed: owedOf(37, 36, 31, 29), recent: [scan(3000, 'refused', 'No case is open in Theatre 1: if it is on a digit, scan that digit card; else NEW CASE first.')] }),
	'look-now': view({
		case: null, team: [], cards: cards('STEP DONE', 'NO', 'NEW CASE'), after: afterUnresolved, ended: { case: 40, outcome: 'unresolved', at: '10:20', ago_ms: 240000 },
		next: 'Case 40: look at that patient\'s right index finger now: scan STEP DONE when it was seen bare; NO if a tourniquet is on it; the code on the slip when it is in your hand; NEW CASE for the next patient.',
		slips: slipsOf(40), owed: owedOf(40), recent: [scan(6000, 'accepted', 'Case 40 ended UNRESOLVED; its incident number is owed. Finger tourniquet, ring, medium: NOT accounted for, 1 of 2 shown. Artery forceps: 1 of 1, mark read.')],
	}),
	'look-now-more': view({
		case: null, team: [], cards: cards('STEP DONE', 'NEW CASE'), after: [{ case: 31, what: 'patient-called-back', digit: 0, at: '20 Nov 2026 16:10' }, { case: 31, what: 'digit-seen-bare', digit: 0, at: '20 Nov 2026 16:10' }, { case: 31, what: 'ward-told', digit: 0, at: '20 Nov 2026 16:10' }, ...afterUnresolved],
		next: 'Case 31: call that patient back now, if not here any more: scan STEP DONE when it was done; NEW CASE for the next patient.', recent: [scan(2000, 'refused', 'No case is open in Theatre 1: scan NEW CASE first.')], slips: slipsOf(38, 39, 40, 35, 34, 33, 32, 30), owed: owedOf(37, 36, 31, 29),
	}),
	'on-look-now': view({
		next: 'When the tourniquet is off the right index finger: scan its digit card, then OFF.', ...whenOff, items: bothOn, digits: [onIndex], after: afterUnresolved,
		recent: [scan(4000, 'accepted', 'Tourniquet on, right index finger, from 10:12; forceps on it. The clock runs.')],
	}),
};
