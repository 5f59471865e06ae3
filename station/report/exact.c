/* The binomial distribution and what follows from it, by the incomplete beta function: its continued fraction (NIST Digital
 * Library of Mathematical Functions, 8.17.22), evaluated forwards. */
#include <math.h>

#include "report/stats.h"

#define TINY 1e-300

static double fraction(double a, double b, double x)
{
	double c = 1, d = 1 - (a + b) * x / (a + 1), f;
	d = 1 / (fabs(d) < TINY ? TINY : d);
	f = d;
	for (int m = 1; m < 100000; m++) {
		double even = m * (b - m) * x / ((a + 2 * m - 1) * (a + 2 * m));
		double odd = -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1));
		for (int k = 0; k < 2; k++) {
			double part = k ? odd : even;
			d = 1 + part * d;
			c = 1 + part / c;
			d = 1 / (fabs(d) < TINY ? TINY : d);
			c = fabs(c) < TINY ? TINY : c;
			f *= d * c;
		}
		if (fabs(d * c - 1) < 1e-15)
			break;
	}
	return f;
}

/* I_x(a, b). lgamma_r, because lgamma() leaves its sign in a global. */
static double beta_share(double x, double a, double b)
{
	int sign;
	if (x <= 0 || x >= 1)
		return x >= 1;
	double front = exp(lgamma_r(a + b, &sign) - lgamma_r(a, &sign) - lgamma_r(b, &sign) + a * log(x) +
	                   b * log1p(-x));
	if (x < (a + 1) / (a + b + 2))
		return front * fraction(a, b, x) / a;
	return 1 - front * fraction(b, a, 1 - x) / b;
}

/* The x at which I_x(a, b) is q: it only rises, so halving finds it. */
static double beta_quantile(double q, double a, double b)
{
	double low = 0, high = 1;
	for (int i = 0; i < 200 && high - low > 1e-17 * high; i++) {
		double middle = (low + high) / 2;
		if (beta_share(middle, a, b) < q)
			low = middle;
		else
			high = middle;
	}
	return (low + high) / 2;
}

double stats_binomial(int x, int n, double p)
{
	if (x < 0 || x >= n)
		return x >= n;
	return 1 - beta_share(p, x + 1, n - x);
}

/* The smallest x with P(X <= x) >= q. */
static int binomial_quantile(double q, int n, double p)
{
	int low = 0, high = n;
	while (low < high) {
		int middle = low + (high - low) / 2;
		if (stats_binomial(middle, n, p) >= q * (1 - 1e-14))
			high = middle;
		else
			low = middle + 1;
	}
	return low;
}

struct stats_limits stats_share_limits(int n, double p)
{
	double low = binomial_quantile(STATS_TAIL, n, p);
	return (struct stats_limits){n * p, binomial_quantile(1 - STATS_TAIL, n, p), low > 0 ? low : NAN};
}

void stats_interval(int x, int n, double *low, double *high)
{
	*low = x > 0 ? beta_quantile(0.025, x, n - x + 1) : 0;
	*high = x < n ? beta_quantile(0.975, x + 1, n - x) : 1;
}

double stats_none_bound(int n)
{
	return -expm1(log(0.05) / n);
}
