/* Times ARPACK (shift and invert about 0, mode 3) with CHOLMOD's supernodal factor on
 * K x = lambda M x: the lowest values and their vectors.
 *
 *   tones K.mtx M.mtx COUNT NCV TOLERANCE
 *
 * The files are as for chol; METIS orders the nodes. NCV is the number of Lanczos vectors,
 * TOLERANCE that of ARPACK: of the Ritz estimate, relative to the value of the operator.
 * One line of JSON comes out. */
#include "common.h"

typedef int f_int;
void dsaupd_(f_int *ido, const char *bmat, f_int *n, const char *which, f_int *nev, double *tol, double *resid,
             f_int *ncv, double *v, f_int *ldv, f_int *iparam, f_int *ipntr, double *workd, double *workl,
             f_int *lworkl, f_int *info, size_t, size_t);
void dseupd_(f_int *rvec, const char *howmny, f_int *select, double *d, double *z, f_int *ldz, double *sigma,
             const char *bmat, f_int *n, const char *which, f_int *nev, double *tol, double *resid, f_int *ncv,
             double *v, f_int *ldv, f_int *iparam, f_int *ipntr, double *workd, double *workl, f_int *lworkl,
             f_int *info, size_t, size_t, size_t);

/* y = m x from the upper triangle by columns */
static void multiply(const cholmod_sparse *m, const double *x, double *y)
{
	const int64_t *p = m->p, *i = m->i;
	const double *v = m->x;
	memset(y, 0, m->ncol * sizeof *y);
	for (size_t j = 0; j < m->ncol; j++) {
		double s = 0, t = x[j];
		int64_t k = p[j], end = p[j + 1];
		for (; k < end && i[k] < (int64_t)j; k++) {
			s += v[k] * x[i[k]];
			y[i[k]] += v[k] * t;
		}
		if (k < end)
			s += v[k] * t;
		y[j] += s;
	}
}

typedef struct {
	cholmod_factor *f;
	cholmod_dense *x, *y, *e;
	cholmod_common *c;
	int solves;
} inverse;

/* to = K^-1 from */
static void solve(inverse *s, const double *from, double *to)
{
	size_t n = s->f->n;
	cholmod_dense b = {.nrow = n, .ncol = 1, .nzmax = n, .d = n, .x = (void *)from, .xtype = CHOLMOD_REAL, .dtype = CHOLMOD_DOUBLE};
	if (!cholmod_l_solve2(CHOLMOD_A, s->f, &b, NULL, &s->x, NULL, &s->y, &s->e, s->c))
		fail("solve failed");
	memcpy(to, s->x->x, n * sizeof *to);
	s->solves++;
}

int main(int argc, char **argv)
{
	if (argc != 6)
		fail("usage: tones K.mtx M.mtx COUNT NCV TOLERANCE");
	cholmod_common c;
	cholmod_l_start(&c);
	c.supernodal = CHOLMOD_SUPERNODAL;
	c.final_ll = 1;
	cholmod_sparse *k = read_matrix(argv[1], &c), *m = read_matrix(argv[2], &c);
	f_int n = k->ncol, nev = atoi(argv[3]), ncv = atoi(argv[4]), ido = 0, info = 0, lworkl = ncv * (ncv + 8);
	double tol = atof(argv[5]), sigma = 0;
	stamp begin = now(), t = begin;
	inverse op = {.c = &c};
	op.f = analyse(k, 1, &c);
	stamp order = since(t);
	t = now();
	cholmod_l_factorize(k, op.f, &c);
	if (c.status != CHOLMOD_OK)
		fail("not positive definite");
	stamp factor = since(t);
	t = now();
	double *v = malloc((size_t)n * ncv * sizeof *v), *resid = malloc(n * sizeof *resid);
	double *workd = malloc((size_t)3 * n * sizeof *workd), *workl = malloc(lworkl * sizeof *workl), *b = malloc(n * sizeof *b);
	f_int iparam[11] = {1, 0, 300, 1, 0, 0, 3}, ipntr[14];
	for (;;) {
		dsaupd_(&ido, "G", &n, "LM", &nev, &tol, resid, &ncv, v, &n, iparam, ipntr, workd, workl, &lworkl, &info, 1, 2);
		double *x = workd + ipntr[0] - 1, *y = workd + ipntr[1] - 1;
		if (ido == -1) {
			multiply(m, x, b);
			solve(&op, b, y);
		} else if (ido == 1) {
			solve(&op, workd + ipntr[2] - 1, y);
		} else if (ido == 2) {
			multiply(m, x, y);
		} else {
			break;
		}
	}
	if (info != 0)
		fail("ARPACK did not converge");
	double *d = malloc(nev * sizeof *d);
	f_int *select = calloc(ncv, sizeof *select), rvec = 1;
	dseupd_(&rvec, "A", select, d, v, &n, &sigma, "G", &n, "LM", &nev, &tol, resid, &ncv, v, &n, iparam, ipntr, workd,
	        workl, &lworkl, &info, 1, 1, 2);
	stamp lanczos = since(t), all = since(begin);
	printf("{");
	print_stamp("analyse", order);
	print_stamp("factor", factor);
	print_stamp("search", lanczos);
	print_stamp("all", all);
	struct rusage used;
	getrusage(RUSAGE_SELF, &used);
	printf("\"solves\": %d, \"peak\": %.1f, \"values\": [", op.solves, used.ru_maxrss / 1e3);
	for (int i = 0; i < nev; i++)
		printf("%s%.15g", i ? ", " : "", d[i]);
	printf("]}\n");
	return 0;
}
