// A daemon's end of the two pipes: starts bandtally-board, writes views to it and reads what it says.
import { spawn } from 'node:child_process';
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
			s.lines.push(JSON.parse(l));
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
