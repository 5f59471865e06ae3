import { t } from './words.js';

// Five sounds, told apart by rhythm as well as by pitch: each a list of [start s, pitch Hz, length s].
const tunes = {
	accepted: [[0, 659, 0.09]],
	refused: [[0, 330, 0.26], [0.36, 247, 0.42]],
	question: [[0, 523, 0.09], [0.14, 784, 0.3]],
	reminder: [[0, 587, 0.14], [0.45, 587, 0.14], [0.9, 587, 0.14]],
	fault: [[0, 415, 0.08], [0.13, 415, 0.08], [0.26, 415, 0.08], [0.39, 415, 0.08], [0.8, 415, 0.08], [0.93, 415, 0.08], [1.06, 415, 0.08], [1.19, 415, 0.08]],
};
export const names = Object.keys(tunes);

let context = null, busy = 0; // until when, on the context's clock: one sound after the other

// From 0 to 1. A view says sound {volume 0..100, quiet: it is within the quiet hours, speech}; quiet hours and a
// patient who is awake make every sound soft, and none silent: only volume 0 does that.
export function loudness(view) {
	const s = view?.sound ?? {};
	const volume = Math.min(100, Math.max(0, s.volume ?? 60)) / 100;
	return volume * (s.quiet || view?.awake ? 0.2 : 1);
}

// Browsers keep a page silent until it is touched, unless they were started otherwise.
export const waits = () => (context ??= new AudioContext()).state !== 'running';
export const wake = () => (context ??= new AudioContext()).resume();

const lasts_s = (name) => Math.max(...tunes[name].map(([start, , length]) => start + length));

// The reply in words, by the browser's voice. A count that is spoken at an awake patient's ear frightens, so then
// there is none. A newer reply ends the older one. A browser without a voice says so once, in its log.
const spoken = ['accepted', 'refused', 'question'];
let due = 0, voiceless = false;
export const hasNoVoice = () => voiceless;

function say(text, level) {
	const words = new SpeechSynthesisUtterance(text);
	words.lang = document.documentElement.lang;
	words.volume = level;
	words.onstart = () => { voiceless = false; };
	words.onerror = (e) => {
		if (['canceled', 'interrupted', 'not-allowed'].includes(e.error))
			return;
		if (!voiceless)
			console.warn(`Replies are not spoken: this browser has no voice (${e.error}): install speech-dispatcher with a voice and start the browser with it, or set speech = no in station.ini`);
		voiceless = true;
	};
	speechSynthesis.speak(words);
}

function speak(name, view, level) {
	const last = view?.recent?.[0];
	if (!spoken.includes(name) || !window.speechSynthesis)
		return;
	clearTimeout(due);
	speechSynthesis.cancel();
	if (!view?.sound?.speech || view.awake || level === 0 || last?.verdict !== name)
		return;
	const text = `${name === 'accepted' ? '' : `${t(name)}. `}${last.said}${name === 'question' ? ` ${view.next}` : ''}`;
	due = setTimeout(() => say(text, level), lasts_s(name) * 1000);
}

// What is `urgent` the quiet hours do not soften.
export function sound(name, view, urgent = false) {
	const level = loudness(urgent ? { ...view, sound: { ...view?.sound, quiet: false } } : view);
	document.dispatchEvent(new CustomEvent('sounded', { detail: { name, level } }));
	speak(name, view, level);
	if (level === 0 || waits())
		return;
	const t0 = Math.max(context.currentTime + 0.02, busy);
	busy = t0 + 0.3 + lasts_s(name);
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
