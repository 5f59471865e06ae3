// A scanner that the station does not know types into whatever lies in front, which is this page. No person types so
// fast. What it read was not counted, and that must be said.
const FAST_MS = 60, LEAST = 6, QUIET_MS = 150, STAYS_MS = 120000;
let typed = 0, last = 0, until = 0, timer = 0;

export const stray = () => performance.now() < until;

export function watchStrays(heard) {
	addEventListener('keydown', (e) => {
		if (e.repeat || document.querySelector('dialog[open]'))
			return;
		const now = performance.now();
		typed = now - last > FAST_MS ? 0 : typed;
		last = now;
		typed += e.key.length === 1;
		if (typed < LEAST)
			return;
		e.preventDefault(); // its Enter must press no button
		clearTimeout(timer);
		timer = setTimeout(() => {
			typed = 0;
			until = performance.now() + STAYS_MS;
			heard();
		}, QUIET_MS);
	}, true);
}
