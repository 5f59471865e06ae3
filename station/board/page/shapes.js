// One small shape for each state, so that it is told by word and form before colour.
import { svg } from './dom.js';

const P = {
	missing: 'M12 2 23 21H1zM12 8v6M12 17v1.6',
	reminder: 'M5 2h14M5 22h14M7 2c0 6 4 7 4 10s-4 4-4 10M17 2c0 6-4 7-4 10s4 4 4 10M9.5 20c1-2.5 4-2.5 5 0',
	fault: 'M12 2 23 21H1zM12 8v6M12 17v1.6',
	owed: 'M4 21h16M5 17l1-4L16 3l3 3L9 16z',
	slip: 'M6 2h12v20l-3-2-3 2-3-2-3 2zM9 7h6M9 11h6',
	done: 'M3 3h18v18H3zM7.5 12l3.5 4 6-8.5',
	'not-done': 'M3 3h4M10 3h4M17 3h4M3 21h4M10 21h4M17 21h4M3 7v4M3 14v4M21 7v4M21 14v4M7.5 12h9',
	open: 'M3 3h18v18H3z',
	here: 'M3 12h17M13 5l7 7-7 7',
	keys: 'M1 5h22v14H1zM5 9.5h1M9.5 9.5h1M14 9.5h1M18.5 9.5h1M5 14.5h1M9 14.5h6M18.5 14.5h1',
	light: 'M12 2v3M12 19v3M2 12h3M19 12h3M5 5l2 2M17 17l2 2M5 19l2-2M17 7l2-2M12 8a4 4 0 1 0 .01 0z',
	waits: 'M8 5v14M16 5v14',
	quiet: 'M3 9h4l5-5v16l-5-5H3zM16 10v4',
};

export function shape(name) {
	return svg('svg', { class: `shape ${name}`, viewBox: '0 0 24 24', 'aria-hidden': 'true' }, svg('path', { d: P[name] ?? P.open }));
}
