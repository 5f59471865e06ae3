/* setup: the station with the settings that were written. */
#include <errno.h>
#include <stdio.h>
#include <string.h>
#include <time.h>

#include "tool/client.h"
#include "tool/label.h"
#include "tool/setup-ask.h"
#include "tool/setup-run.h"
#include "tool/setup.h"

#define PATIENCE_MS 20000
#define UNIT "bandtallyd.service"

/* Whether systemd has a station on this data folder. */
static bool is_unit(void)
{
	char *argv[] = {"systemctl", "show", "--property=ExecStart", UNIT, NULL}, wanted[4200];
	_cleanup_(buf_free) struct buf said = {0};
	snprintf(wanted, sizeof wanted, "--data %s ", client_folder);
	return run_found("systemctl", argv, &said) == 0 && said.size && strstr(said.data, wanted);
}

static bool answers(int *open)
{
	struct error e;
	_cleanup_(json_drop) json_t *status = label_status(&e);
	if (status && open)
		*open = (int)json_number(status, "open_cases", 0);
	return status != NULL;
}

static int restart(void)
{
	char *argv[] = {"systemctl", "restart", UNIT, NULL};
	_cleanup_(buf_free) struct buf said = {0};
	if (run_found("systemctl", argv, &said) != 0) {
		fputs("bandtally: the settings are written, but systemd did not start the station with them: "
		      "see "
		      "'systemctl status bandtallyd'\n",
		      stderr);
		return EXIT_FAILED;
	}
	for (int ms = 0; ms < PATIENCE_MS; ms += 100) {
		if (answers(NULL)) {
			puts("the station runs with these settings");
			return EXIT_OK;
		}
		nanosleep(&(struct timespec){.tv_nsec = 100000000}, NULL);
	}
	fputs("bandtally: the settings are written, but the station does not answer: see 'journalctl -u "
	      "bandtallyd'\n",
	      stderr);
	return EXIT_FAILED;
}

int setup_renew(const struct setup *s)
{
	int open = 0;
	bool runs = answers(&open), unit = is_unit();
	(void)s;
	if (open)
		printf(
		    "A case is open, so that the station goes on as it is: start it anew once the case has "
		    "ended (%s)\n",
		    unit ? "sudo systemctl restart bandtallyd" : "bandtallyd");
	else if (unit)
		return restart();
	else
		printf("It counts from the station's next start: %sbandtallyd --data %s\n",
		       runs ? "end it, and then " : "", client_folder);
	return EXIT_OK;
}

/* Whether the station that answers has the letters that were written: they stand on badges and sheets. */
static bool is_renewed(const struct setup *s)
{
	char letters[8];
	struct error e;
	_cleanup_(json_drop) json_t *status = label_status(&e);
	setup_value(&s->files, "site", "letters", letters, sizeof letters);
	return status && strcmp(json_text(status, "site"), letters) == 0;
}

int setup_wait_for_station(const struct setup *s, const char *what, const char *option)
{
	char asks[160], line[16];
	snprintf(asks, sizeof asks,
	         "For %s the station must run with these settings: start it, then press Enter", what);
	while (!is_renewed(s)) {
		if (!s->asks) {
			fprintf(stderr,
			        "bandtally: the settings are written; for %s the station must run with them: "
			        "start it, and give --%s again\n",
			        what, option);
			return EXIT_FAILED;
		}
		if (ask_line(asks, "", line, sizeof line) == -ECANCELED) {
			fprintf(stderr,
			        "bandtally: stopped: the settings are written; for %s give --%s again\n",
			        what, option);
			return EXIT_FAILED;
		}
	}
	return EXIT_OK;
}
