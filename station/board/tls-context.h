/* What the board elsewhere shows, and whom it admits: the TLS library's context, made of texts. Only the board's tls.c
 * uses it. */
#ifndef BANDTALLY_BOARD_TLS_CONTEXT_H
#define BANDTALLY_BOARD_TLS_CONTEXT_H

#include <openssl/types.h>

#include "base/error.h"
#include "base/pem.h"

/* To be freed with SSL_CTX_free(). NULL with `e` filled: which file, why, what to do. */
SSL_CTX *tls_context_new(const struct pem_files *files, struct error *e);

/* Whether `context` would admit the client of a connection that was made under another one. X509_V_OK, or why not. */
int tls_context_judge(SSL_CTX *context, const SSL *connection);

#endif
