// How times and states are said. Nothing here says more than was counted or seen.
export function ago(ms) {
	const s = Math.max(0, Math.floor(ms / 1000));
	if (s < 60)
		return `${s} s ago`;
	if (s < 3600)
		return `${Math.floor(s / 60)} min ago`;
	return s < 172800 ? `${Math.floor(s / 3600)} h ago` : `${Math.floor(s / 86400)} days ago`;
}

export const minutes = (ms) => `${Math.max(0, Math.floor(ms / 60000))} min`;

export const verdicts = { accepted: 'Accepted', refused: 'Refused', question: 'Question' };
const plainVerdicts = { accepted: 'Noted', refused: 'Not taken', question: 'Question' };
export const verdict = (v, awake) => (awake ? plainVerdicts : verdicts)[v] ?? v;

// Through a power cut the longer of both clocks: the wall clock's, or the known minutes where it cannot be trusted.
export const doubt = (d) => (!d.gap ? '' : d.by_wall_ms ? 'by wall clock' : 'at least');
const runs = (d, passed_ms) => minutes(Math.max(d.stretch_ms, d.by_wall_ms ?? 0) + passed_ms);

// What stands at a digit, as said beside it on the drawing.
export function digitWords(d, passed_ms) {
	const how = doubt(d) && `${doubt(d)} `;
	switch (d.state) {
	case 'on': return `${how}${runs(d, passed_ms)}`;
	case 'maybe-on': return `on? ${how}${runs(d, passed_ms)}`;
	case 'off': return d.seen_bare ? 'seen bare' : `was on ${d.gap ? 'at least ' : ''}${minutes(d.total_ms)}`;
	default: return d.seen_bare ? 'seen bare' : d.marked ? 'marked' : '';
	}
}

export const intended =
	'This station records and supports the count that people make, and never replaces it. ' +
	'Local policy and the licensed practitioner decide.';
