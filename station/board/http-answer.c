#include "board/http-answer.h"

#include <event2/buffer.h>
#include <event2/http.h>
#include <event2/keyvalq_struct.h>
#include <string.h>

void answer_headers(struct evhttp_request *req, const char *type)
{
	static const char *const always[][2] = {
	    {"Content-Security-Policy",
	     "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; "
	     "connect-src 'self'; base-uri 'none'; form-action 'none'; "
	     "frame-ancestors 'none'"},
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
	for (size_t i = 0; i < sizeof always / sizeof *always; i++)
		evhttp_add_header(out, always[i][0], always[i][1]);
}

void answer(struct evhttp_request *req, int status, const char *reason, const char *type, const char *text)
{
	struct evbuffer *body = evbuffer_new();
	if (body)
		evbuffer_add(body, text, strlen(text));
	answer_headers(req, type);
	evhttp_send_reply(req, status, reason, body);
	if (body)
		evbuffer_free(body);
}

void answer_refusal(struct evhttp_request *req, int status, const char *reason, const char *sentence)
{
	answer(req, status, reason, "text/plain; charset=utf-8", sentence);
}
