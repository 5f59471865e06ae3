#include "board/tls-context.h"

#include <errno.h>
#include <openssl/err.h>
#include <openssl/pem.h>
#include <openssl/ssl.h>
#include <openssl/x509v3.h>
#include <stdbool.h>

#define CHAIN_BYTES_MAX 16384 /* of a client's certificates */
#define CHAIN_MAX 3           /* authorities between a client and one that is admitted */

static int fault(struct error *e, const struct pem_files *f, enum pem which, const char *mend)
{
	const char *why = ERR_reason_error_string(ERR_peek_last_error());
	ERR_clear_error();
	return error_set(e, -EINVAL, PEM_WHERE "%s %s: %s: %s" PEM_MEND, pem_word(which), f->path[which],
	                 why ? why : "it does not fit", mend);
}

/* A key that is locked would make the library ask at a terminal. */
static int no_phrase(char *out, int size, int writing, void *context)
{
	(void)out;
	(void)size;
	(void)writing;
	(void)context;
	return -1;
}

static BIO *reader_new(const struct pem_files *f, enum pem which)
{
	return BIO_new_mem_buf(f->text[which].data, (int)f->text[which].size);
}

/* How many further certificates were taken, or -1. `take` has a reference of its own when it returns 1. */
static int take_all(SSL_CTX *c, BIO *from, int (*take)(SSL_CTX *, X509 *))
{
	int n = 0, taken = 1;
	for (X509 *x; taken == 1 && (x = PEM_read_bio_X509(from, NULL, NULL, NULL)); n++) {
		taken = take(c, x);
		X509_free(x);
	}
	bool at_end = ERR_GET_REASON(ERR_peek_last_error()) == PEM_R_NO_START_LINE;
	if (taken != 1 || (!at_end && ERR_peek_last_error()))
		return -1;
	ERR_clear_error();
	return n;
}

static int lead(SSL_CTX *c, X509 *x)
{
	return (int)SSL_CTX_add1_chain_cert(c, x);
}

static int use_certificate(SSL_CTX *c, const struct pem_files *f)
{
	BIO *from = reader_new(f, PEM_CERTIFICATE);
	X509 *own = from ? PEM_read_bio_X509(from, NULL, NULL, NULL) : NULL;
	int done = own && SSL_CTX_use_certificate(c, own) == 1 && take_all(c, from, lead) >= 0;
	X509_free(own);
	BIO_free(from);
	return done;
}

static int use_key(SSL_CTX *c, const struct pem_files *f)
{
	BIO *from = reader_new(f, PEM_KEY);
	EVP_PKEY *key = from ? PEM_read_bio_PrivateKey(from, NULL, no_phrase, NULL) : NULL;
	int done = key && SSL_CTX_use_PrivateKey(c, key) == 1;
	EVP_PKEY_free(key);
	BIO_free(from);
	return done;
}

static int use_own(SSL_CTX *c, const struct pem_files *f, struct error *e)
{
	if (!use_certificate(c, f))
		return fault(e, f, PEM_CERTIFICATE, "give a PEM certificate");
	if (!use_key(c, f))
		return fault(e, f, PEM_KEY, "give the certificate's PEM key, without a pass phrase");
	if (X509_cmp_current_time(X509_get0_notAfter(SSL_CTX_get0_certificate(c))) < 0)
		return error_set(e, -EKEYEXPIRED,
		                 PEM_WHERE "certificate %s: its time is over: have a new one made" PEM_MEND,
		                 f->path[PEM_CERTIFICATE]);
	return 0;
}

static int admit(SSL_CTX *c, X509 *authority)
{
	return X509_STORE_add_cert(SSL_CTX_get_cert_store(c), authority) == 1 &&
	       SSL_CTX_add_client_CA(c, authority) == 1;
}

static int admit_clients(SSL_CTX *c, const struct pem_files *f, struct error *e)
{
	BIO *from = reader_new(f, PEM_CLIENTS);
	int n = from ? take_all(c, from, admit) : -1;
	BIO_free(from);
	if (n <= 0)
		return fault(e, f, PEM_CLIENTS, "give the PEM certificates of the authorities");
	SSL_CTX_set_verify(c, SSL_VERIFY_PEER | SSL_VERIFY_FAIL_IF_NO_PEER_CERT, NULL);
	SSL_CTX_set_verify_depth(c, CHAIN_MAX);
	/* An authority within a larger one is admitted by itself, not with all that the larger one signs. */
	X509_VERIFY_PARAM_set_flags(SSL_CTX_get0_param(c), X509_V_FLAG_PARTIAL_CHAIN);
	return 0;
}

/* Of the lists only the one of the authority that signed a client must be there, and one whose time is over while the
 * board runs goes on to be honoured: else it would shut out everybody. As it is read it is refused. */
static int judge(int good, X509_STORE_CTX *c)
{
	int why = X509_STORE_CTX_get_error(c);
	bool passed_over = why == X509_V_ERR_CRL_HAS_EXPIRED || why == X509_V_ERR_CRL_NOT_YET_VALID ||
	                   (why == X509_V_ERR_UNABLE_TO_GET_CRL && X509_STORE_CTX_get_error_depth(c) > 0);
	if (!good && passed_over)
		X509_STORE_CTX_set_error(c, X509_V_OK);
	return good || passed_over;
}

/* How many lists were taken, -1 where one cannot be read, or -EKEYEXPIRED. */
static int take_lists(X509_STORE *store, BIO *from)
{
	int n = 0, added = 1, over = 0;
	for (X509_CRL *list; added && !over && (list = PEM_read_bio_X509_CRL(from, NULL, NULL, NULL)); n++) {
		const ASN1_TIME *until = X509_CRL_get0_nextUpdate(list);
		over = until && X509_cmp_current_time(until) < 0;
		added = X509_STORE_add_crl(store, list) == 1;
		X509_CRL_free(list);
	}
	bool at_end = ERR_GET_REASON(ERR_peek_last_error()) == PEM_R_NO_START_LINE;
	return over ? -EKEYEXPIRED : added && at_end ? n : -1;
}

static bool has_list(STACK_OF(X509_OBJECT) * all, X509 *authority)
{
	for (int i = 0; i < sk_X509_OBJECT_num(all); i++) {
		X509_CRL *list = X509_OBJECT_get0_X509_CRL(sk_X509_OBJECT_value(all, i));
		if (list && X509_NAME_cmp(X509_CRL_get_issuer(list), X509_get_subject_name(authority)) == 0 &&
		    X509_CRL_verify(list, X509_get0_pubkey(authority)) == 1)
			return true;
	}
	return false;
}

/* An authority without its list would shut out all that it signed, each without a word. */
static int each_has_list(X509_STORE *store, const char *file, struct error *e)
{
	STACK_OF(X509_OBJECT) *all = X509_STORE_get0_objects(store);
	for (int i = 0; i < sk_X509_OBJECT_num(all); i++) {
		X509 *authority = X509_OBJECT_get0_X509(sk_X509_OBJECT_value(all, i));
		char name[200] = "";
		if (!authority || has_list(all, authority))
			continue;
		ERR_clear_error();
		X509_NAME_oneline(X509_get_subject_name(authority), name, sizeof name);
		return error_set(e, -ENOENT,
		                 PEM_WHERE "revoked %s: no list in it was signed by %s of clients: add it to "
		                           "the file, empty where it revoked none",
		                 file, name);
	}
	return 0;
}

static int honour_revoked(SSL_CTX *c, const struct pem_files *f, struct error *e)
{
	X509_STORE *store = SSL_CTX_get_cert_store(c);
	if (!f->text[PEM_REVOKED].size)
		return 0;
	BIO *from = reader_new(f, PEM_REVOKED);
	int n = from ? take_lists(store, from) : -1;
	BIO_free(from);
	if (n == -EKEYEXPIRED)
		return error_set(
		    e, n, PEM_WHERE "revoked %s: the time of a list is over: have a new one made" PEM_MEND,
		    f->path[PEM_REVOKED]);
	if (n <= 0)
		return fault(e, f, PEM_REVOKED, "give the authorities' lists as PEM");
	ERR_clear_error();
	X509_STORE_set_verify_cb(store, judge);
	X509_VERIFY_PARAM_set_flags(SSL_CTX_get0_param(c), X509_V_FLAG_CRL_CHECK | X509_V_FLAG_CRL_CHECK_ALL);
	return each_has_list(store, f->path[PEM_REVOKED], e);
}

static int limit(SSL_CTX *c, struct error *e)
{
	SSL_CTX_set_options(c, SSL_OP_NO_TICKET | SSL_OP_NO_RENEGOTIATION | SSL_OP_NO_COMPRESSION |
	                           SSL_OP_CIPHER_SERVER_PREFERENCE);
	SSL_CTX_set_mode(c, SSL_MODE_RELEASE_BUFFERS);
	SSL_CTX_set_session_cache_mode(c, SSL_SESS_CACHE_OFF);
	SSL_CTX_set_max_cert_list(c, CHAIN_BYTES_MAX);
	if (SSL_CTX_set_num_tickets(c, 0) == 1 && SSL_CTX_set_min_proto_version(c, TLS1_2_VERSION) == 1 &&
	    SSL_CTX_set_cipher_list(c, "ECDHE+AESGCM:ECDHE+CHACHA20") == 1)
		return 0;
	ERR_clear_error();
	return error_set(e, -ENOTSUP,
	                 PEM_WHERE "TLS 1.2 and 1.3 are not to be had: install libssl3 of Debian 12");
}

SSL_CTX *tls_context_new(const struct pem_files *f, struct error *e)
{
	SSL_CTX *c = SSL_CTX_new(TLS_server_method());
	if (!c) {
		error_set(e, -ENOMEM, PEM_WHERE "not started: no memory: close other programs");
		return NULL;
	}
	ERR_clear_error();
	if (limit(c, e) < 0 || use_own(c, f, e) < 0 || admit_clients(c, f, e) < 0 ||
	    honour_revoked(c, f, e) < 0) {
		SSL_CTX_free(c);
		return NULL;
	}
	return c;
}

int tls_context_judge(SSL_CTX *c, const SSL *connection)
{
	int why = X509_V_ERR_OUT_OF_MEM;
	X509_STORE_CTX *x = X509_STORE_CTX_new();
	if (x &&
	    X509_STORE_CTX_init(x, SSL_CTX_get_cert_store(c), SSL_get0_peer_certificate(connection),
	                        SSL_get_peer_cert_chain(connection)) == 1 &&
	    X509_STORE_CTX_set_default(x, "ssl_client") == 1 &&
	    X509_VERIFY_PARAM_set1(X509_STORE_CTX_get0_param(x), SSL_CTX_get0_param(c)) == 1)
		why = X509_verify_cert(x) == 1 ? X509_V_OK : X509_STORE_CTX_get_error(x);
	X509_STORE_CTX_free(x);
	ERR_clear_error();
	return why;
}
