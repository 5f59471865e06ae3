// A heartbeat comes once a second; when it stays away the page must say so within 3 s.
const STALE_MS = 2500;
const AGAIN_MS = 1500;

export class Link {
	constructor(address, handlers) {
		this.address = address;
		this.handlers = handlers;
		this.started = this.last = performance.now();
		this.heard = false;
		this.refused = ''; // why the board shows nothing, in its own words
		this.open();
	}

	open() {
		this.refused = '';
		const s = this.source = new EventSource(this.address);
		const on = (name, act) => s.addEventListener(name, (e) => act(JSON.parse(e.data)));
		on('alive', () => { this.last = performance.now(); this.heard = true; this.handlers.alive(); });
		on('hello', (h) => this.handlers.hello(h));
		on('view', (m) => this.handlers.view(m.view, performance.now() - m.age_ms));
		on('picture', this.handlers.picture);
		on('status', (m) => this.handlers.status(m.status));
		s.addEventListener('error', () => {
			// The browser tries again by itself, unless the answer was a refusal.
			if (s.readyState === EventSource.CLOSED && this.source === s)
				void this.ask();
		});
	}

	// An event stream that was refused does not say why; a plain request does.
	async ask() {
		const stop = new AbortController();
		try {
			const r = await fetch(this.address, { signal: stop.signal });
			this.refused = r.ok ? '' : (await r.text()).trim();
			if (r.status === 403)
				this.handlers.closed();
		} catch { /* nobody answers: the silence says so */ }
		stop.abort();
		setTimeout(() => this.open(), AGAIN_MS);
	}

	// How long nothing was heard, in ms; 0 while the heartbeat comes.
	silence() {
		const ms = performance.now() - this.last;
		return ms > STALE_MS ? ms : 0;
	}
}
