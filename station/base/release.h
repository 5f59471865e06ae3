/* When this version was made, as far as the station must know it. */
#ifndef BANDTALLY_BASE_RELEASE_H
#define BANDTALLY_BASE_RELEASE_H

/* yyyymmdd: a wall clock that stands before this day cannot be right. A constant that a person raises with each release, to
 * its day or an earlier one, so that two builds of one version are alike. */
#define RELEASED 20250101

#endif
