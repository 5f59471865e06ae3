// Tests as sentences: each runs by itself, and a failure is told with what was seen.
let failed = 0, told = 0;

// With words after the program's name, only sentences that hold one of them are told.
const wanted = process.argv.slice(2);

export async function it(sentence, run) {
	if (wanted.length && !wanted.some((w) => sentence.includes(w)))
		return;
	told++;
	const began = Date.now(), took = () => `${((Date.now() - began) / 1000).toFixed(1)} s`;
	try {
		await run();
		console.log(`ok      ${sentence} (${took()})`);
	} catch (e) {
		failed++;
		console.log(`FAILED  ${sentence}\n        ${String(e.stack ?? e).split('\n').slice(0, 24).join('\n        ')}`);
	}
}

export function end() {
	console.log(`${told - failed} of ${told} hold`);
	process.exit(failed ? 1 : 0);
}

export const sleep = (ms) => new Promise((done) => setTimeout(done, ms));
