/* The station in numbers, for a monitor. */
#ifndef BANDTALLY_TOOL_STATUS_METRICS_H
#define BANDTALLY_TOOL_STATUS_METRICS_H

#include "base/json.h"

/* On stdout, in the text that Prometheus reads (exposition format 0.0.4): numbers and rooms, no case and no person. `status`: as
 * the station tells it (tell/view.h), NULL where it does not answer. */
void status_metrics(const json_t *status);

#endif
