#include "board/http-answer.h"

#include <event2/buffer.h>
#include <event2/http.h>
#include <event2/keyvalq_struct.h>
#include <string.h>

#include "base/buf.h"

static void headers(struct evhttp_request *req, const char *type, const char *policy)
{
	static const char *const always[][2] = {
	    {"X-Content-Type-Options", "nosniff"},
	    {"X-Frame-Options", "DENY"},
	    {"Referrer-Policy", "no-referrer"},
	    {"Cross-Origin-Opener-Policy", "same-origin"},
	    {"Cross-Origin-Resource-Policy", "same-origin"},
	    {"Permissions-Policy", "camera=(), microphone=(), geolocation=(), usb=(), serial=(), hid=()"},
	    {"Cache-Control", "no-store"},
	    {"Connection", "close"},
	};
	struct evkeyvalq *out = evhttp_request_get_output_headers(req);
	evhttp_add_header(out, "Content-Type", type);
	evhttp_add_header(out, "Content-Security-Policy", policy);
	for (size_t i = 0; i < sizeof always / sizeof *always; i++)
		evhttp_add_header(out, always[i][0], always[i][1]);
}

void answer_headers(struct evhttp_request *req, const char *type)
{
	headers(req, type,
	        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src "
	        "'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'");
}

static void send_bytes(struct evhttp_request *req, int status, const char *reason, const char *bytes,
                       size_t size)
{
	struct evbuffer *body = evbuffer_new();
	if (body)
		evbuffer_add(body, bytes, size);
	evhttp_send_reply(req, status, reason, body);
	if (body)
		evbuffer_free(body);
}

void answer(struct evhttp_request *req, int status, const char *reason, const char *type, const char *text)
{
	answer_headers(req, type);
	send_bytes(req, status, reason, text, strlen(text));
}

void answer_page(struct evhttp_request *req, const char *policy, const struct buf *text)
{
	headers(req, "text/html; charset=utf-8", policy);
	send_bytes(req, 200, "OK", text->data, text->size);
}

void answer_refusal(struct evhttp_request *req, int status, const char *reason, const char *sentence)
{
	answer(req, status, reason, "text/plain; charset=utf-8", sentence);
}
