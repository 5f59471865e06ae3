// A daemon's end of the two pipes: starts bandtally-board, writes views to it and reads what it says.
import { spawn } from 'node:child_process';
import { createHash, randomBytes } from 'node:crypto';
import { existsSync } from 'node:fs';
import { createInterface } from 'node:readline';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const here = dirname(fileURLToPath(import.meta.url));
export const bin = process.env.BANDTALLY_BIN ?? join(here, '../../build/release/bin');

export class Station {
	lines = [];
	errors = '';
	seq = 0;
	waiting = [];
	rooms = new Map(); // hash of a ticket -> its room
	cookies = [];
	replies = null; // what a typed code is answered with at once: (keyed) => ({ verdict, said }); null: the test does it

	static async start(...words) {
		if (!existsSync(join(bin, 'bandtally-board'))) {
			console.log(`bandtally-board is not in ${bin}: build it, or set BANDTALLY_BIN`);
			process.exit(1);
		}
		const s = new Station();
		s.child = spawn(join(bin, 'bandtally-board'), ['--port', '0', ...words], { stdio: ['pipe', 'pipe', 'pipe'] });
		s.ended = new Promise((done) => s.child.on('exit', (code, signal) => { s.code = code ?? signal; done(s.code); }));
		s.child.stderr.on('data', (d) => { s.errors += d; });
		s.child.stdin.on('error', () => {});
		createInterface({ input: s.child.stdout }).on('line', (l) => {
			const line = JSON.parse(l);
			s.lines.push(line);
			s.take(line);
			s.waiting = s.waiting.filter((w) => !w());
		});
		s.port = (await s.line((l) => l.listening)).listening.port;
		s.address = `http://127.0.0.1:${s.port}/`;
		return s;
	}

	// The first line, now or later, that `fits`.
	line(fits, patience_ms = 5000) {
		return new Promise((done, fail) => {
			const look = () => {
				const found = this.lines.find(fits);
				if (found)
					done(found);
				return !!found;
			};
			if (look())
				return;
			this.waiting.push(look);
			setTimeout(() => fail(new Error(`the board did not say it in ${patience_ms} ms; stderr: ${this.errors}`)), patience_ms).unref();
		});
	}

	// As bandtallyd does it: the address of a room's page, which works once and gives the browser its cookie.
	ticket(room = 1, base = this.address) {
		const [text, hash] = Station.secret();
		this.rooms.set(hash, room);
		this.letIn();
		return `${base}ticket/${text}`;
	}

	static secret() {
		const text = randomBytes(32).toString('base64url');
		return [text, Station.hash(text)];
	}

	static hash(text) {
		return createHash('sha256').update(text).digest('hex');
	}

	letIn() {
		return this.tell({ let_in: { tickets: [...this.rooms.keys()], cookies: this.cookies } });
	}

	take({ ticket, keyed }) {
		if (ticket) {
			const of = Station.hash(ticket.ticket), room = this.rooms.get(of), [cookie, hash] = Station.secret();
			if (!this.rooms.delete(of))
				return this.tell({ entry: { id: ticket.id } });
			this.cookies = [...this.cookies.slice(-63), { hash, room, types: room > 0 }];
			this.letIn();
			this.tell({ entry: { id: ticket.id, room, cookie } });
		}
		if (keyed && this.replies)
			this.tell({ reply: { id: keyed.id, ...this.replies(keyed) } });
	}

	write(text) {
		return this.child.stdin.write(text);
	}

	tell(what) {
		return this.write(`${JSON.stringify({ v: 1, seq: ++this.seq, ...what })}\n`);
	}

	view(view) {
		return this.tell({ view });
	}

	beat(on = true) {
		clearInterval(this.heart);
		if (!on)
			return;
		this.tell({ alive: true });
		this.heart = setInterval(() => this.tell({ alive: true }), 1000);
	}

	async end() {
		clearInterval(this.heart);
		this.child.stdin.end();
		return this.ended;
	}
}
