/* Answers over HTTP: each bears a policy, and all but a page with one of its own the one that allows nothing from elsewhere
 * and nothing inline. */
#ifndef BANDTALLY_BOARD_HTTP_ANSWER_H
#define BANDTALLY_BOARD_HTTP_ANSWER_H

struct buf;
struct evhttp_request;

void answer_headers(struct evhttp_request *req, const char *type); /* before a reply that is made elsewhere */
/* The whole reply; `req` is the library's again. */
void answer(struct evhttp_request *req, int status, const char *reason, const char *type, const char *text);
/* A whole page of HTML under a policy of its own (Content Security Policy). */
void answer_page(struct evhttp_request *req, const char *policy, const struct buf *text);
void answer_refusal(struct evhttp_request *req, int status, const char *reason, const char *sentence);

#endif
