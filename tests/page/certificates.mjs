// Authorities and certificates for the tests, made by openssl in a folder of their own.
import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { skip } from './browser.mjs';

if (!['/usr/bin/openssl', '/bin/openssl', '/usr/local/bin/openssl'].some(existsSync))
	skip('openssl is not installed: run config/setup --test');

const key = ['-newkey', 'ec', '-pkeyopt', 'ec_paramgen_curve:P-256', '-nodes'];

export class Certificates {
	folder = mkdtempSync(join(tmpdir(), 'board-tls-'));

	openssl(...words) {
		return execFileSync('openssl', words, { cwd: this.folder, stdio: ['ignore', 'pipe', 'ignore'] });
	}

	path(name) {
		return join(this.folder, name);
	}

	read(name) {
		return readFileSync(this.path(name));
	}

	authority(name) {
		this.openssl('req', '-x509', ...key, '-keyout', `${name}.key`, '-out', `${name}.pem`, '-days', '2', '-subj', `/CN=Test authority ${name}`);
	}

	// use: serverAuth, clientAuth, or authority, which is one within the other. Where `until` ([from, to], as openssl has times) is given, in that time, else today.
	make(name, authority, use, until = null) {
		const now = new Date(), at = (days) => `${new Date(now.getTime() + days * 86400000).toISOString().replace(/[-:T]|\.\d+/g, '')}`;
		const [from, to] = until ?? [at(-1), at(1)];
		this.openssl('req', ...key, '-keyout', `${name}.key`, '-out', `${name}.csr`, '-subj', `/CN=${name}`);
		writeFileSync(this.path('index.txt'), '');
		writeFileSync(this.path(`${name}.cnf`), `[ca]\ndefault_ca = own\n[own]\ndatabase = index.txt\nnew_certs_dir = .\nrand_serial = yes\ndefault_md = sha256\npolicy = any\nx509_extensions = leaf\n[any]\ncommonName = supplied\n[leaf]\n${use === 'authority' ? 'basicConstraints = CA:TRUE' : `extendedKeyUsage = ${use}`}\nsubjectAltName = DNS:localhost,DNS:board.example.org,IP:127.0.0.1\n`);
		this.openssl('ca', '-batch', '-notext', '-config', `${name}.cnf`, '-in', `${name}.csr`, '-out', `${name}.pem`,
			'-cert', `${authority}.pem`, '-keyfile', `${authority}.key`, '-startdate', from, '-enddate', to);
	}

	// A list of what `authority` revoked, as the file `to`: `names` beside those of the lists before. It holds for `seconds`.
	revoke(authority, to, names = [], seconds = 86400) {
		const own = `${authority}-revoked`, words = ['-config', `${own}.cnf`, '-cert', `${authority}.pem`, '-keyfile', `${authority}.key`];
		writeFileSync(this.path(`${own}.cnf`), `[ca]\ndefault_ca = own\n[own]\ndatabase = ${own}.txt\ndefault_md = sha256\n`);
		writeFileSync(this.path(`${own}.txt`), '', { flag: 'a' });
		for (const name of names)
			this.openssl('ca', ...words, '-revoke', `${name}.pem`);
		this.openssl('ca', ...words, '-gencrl', ...(seconds > 0 ? ['-crlsec', `${seconds}`] : ['-crl_lastupdate', '20240101000000Z', '-crl_nextupdate', '20240201000000Z']), '-out', to);
	}

	remove() {
		rmSync(this.folder, { recursive: true });
	}
}
