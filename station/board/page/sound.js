// Five sounds of our own, told apart by rhythm as well as by pitch. Each is a list of [start s, pitch Hz, length s].
const tunes = {
	accepted: [[0, 659, 0.09]],
	refused: [[0, 330, 0.26], [0.36, 247, 0.42]],
	question: [[0, 523, 0.09], [0.14, 784, 0.3]],
	reminder: [[0, 587, 0.14], [0.45, 587, 0.14], [0.9, 587, 0.14]],
	fault: [[0, 415, 0.08], [0.13, 415, 0.08], [0.26, 415, 0.08], [0.39, 415, 0.08], [0.8, 415, 0.08], [0.93, 415, 0.08], [1.06, 415, 0.08], [1.19, 415, 0.08]],
};
export const names = Object.keys(tunes);

let context = null, busy = 0; // until when, on the context's clock: one sound after the other

function within(hours, at_ms) {
	const m = /^(\d\d?):(\d\d)-(\d\d?):(\d\d)$/.exec(hours);
	if (!m)
		return false;
	const [from, to] = [m[1] * 60 + +m[2], m[3] * 60 + +m[4]];
	const d = new Date(at_ms), t = d.getHours() * 60 + d.getMinutes();
	return from <= to ? t >= from && t < to : t >= from || t < to;
}

// From 0 to 1. A view may say sound {volume 0..100, quiet true, false or "22:00-07:00"}; quiet hours and a
// patient who is awake make every sound soft, and none silent: only volume 0 does that.
export function loudness(view) {
	const s = view?.sound ?? {};
	const volume = Math.min(100, Math.max(0, s.volume ?? 60)) / 100;
	const quiet = s.quiet === true || (typeof s.quiet === 'string' && within(s.quiet, view.at_ms));
	return volume * (quiet || view?.awake ? 0.2 : 1);
}

// Browsers keep a page silent until it is touched, unless they were started otherwise.
export const waits = () => (context ??= new AudioContext()).state !== 'running';
export const wake = () => (context ??= new AudioContext()).resume();

export function sound(name, view) {
	const level = loudness(view);
	document.dispatchEvent(new CustomEvent('sounded', { detail: { name, level } }));
	if (level === 0 || waits())
		return;
	const t0 = Math.max(context.currentTime + 0.02, busy);
	busy = t0 + 0.3 + Math.max(...tunes[name].map(([start, , length]) => start + length));
	for (const [start, pitch, length] of tunes[name]) {
		const tone = new OscillatorNode(context, { type: 'triangle', frequency: pitch });
		const gain = new GainNode(context, { gain: 0 });
		tone.connect(gain).connect(context.destination);
		gain.gain.setValueAtTime(0, t0 + start);
		gain.gain.linearRampToValueAtTime(level * 0.8, t0 + start + 0.012);
		gain.gain.setValueAtTime(level * 0.8, t0 + start + length - 0.03);
		gain.gain.linearRampToValueAtTime(0, t0 + start + length);
		tone.start(t0 + start);
		tone.stop(t0 + start + length);
	}
}
