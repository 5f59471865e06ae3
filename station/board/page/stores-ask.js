// What this page asks of the station (station/run/asked.h): one question at a time, its answer as an object, or a sentence.
import { t } from './words.js';

const ANSWER_MS = 8000, PART_BYTES = 1500;

export class Refused extends Error {}

// The answer, or a Refused with the station's own sentence.
export async function ask(room, what) {
	let r;
	try {
		r = await fetch('/stores/ask', { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: JSON.stringify({ room, ask: what }), signal: AbortSignal.timeout(ANSWER_MS) });
	} catch (why) {
		throw new Refused(t(why.name === 'TimeoutError' ? 'no-answer' : 'not-reached'));
	}
	if (!r.ok)
		throw new Refused((await r.text()).trim());
	const answer = await r.json();
	if (!answer.ok)
		throw new Refused(answer.error);
	return answer;
}

const base64url = (bytes) => btoa(String.fromCharCode(...bytes)).replaceAll('+', '-').replaceAll('/', '_').replaceAll('=', '');

// Sends a file byte by byte as it lies on the disk: what is wrong with it is the station's to say.
export async function send(room, file) {
	const bytes = new Uint8Array(await file.arrayBuffer());
	for (let at = 0; at === 0 || at < bytes.length; at += PART_BYTES)
		await ask(room, { do: 'file', at, part: base64url(bytes.subarray(at, at + PART_BYTES)) });
}
