/* Times CHOLMOD's supernodal Cholesky factorisation on one matrix.
 *
 *   chol FILE node|dof RHS REPEATS
 *
 * FILE is a Matrix Market file, real symmetric, rows ascending and columns
 * ascending in a row. Zeros in it are left out. "node" orders the graph of the
 * nodes, six degrees of freedom each, with METIS and hands the permutation over;
 * "dof" lets CHOLMOD order the degrees of freedom with METIS. One line of JSON
 * comes out, times in s. Run it with OMP_THREAD_LIMIT=1: else CHOLMOD starts more
 * threads in its assembly loops than there are cores, and loses by that. */
#include <math.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/resource.h>
#include <time.h>

#include <suitesparse/cholmod.h>

enum { BLOCK = 6 };

typedef struct {
	double wall, cpu;
} stamp;

static stamp now(void)
{
	struct timespec wall;
	struct rusage used;
	clock_gettime(CLOCK_MONOTONIC, &wall);
	getrusage(RUSAGE_SELF, &used);
	stamp s = {wall.tv_sec + 1e-9 * wall.tv_nsec,
	           used.ru_utime.tv_sec + used.ru_stime.tv_sec +
	               1e-6 * (used.ru_utime.tv_usec + used.ru_stime.tv_usec)};
	return s;
}

static stamp since(stamp begun)
{
	stamp s = now();
	s.wall -= begun.wall;
	s.cpu -= begun.cpu;
	return s;
}

static stamp least(stamp a, stamp b)
{
	stamp s = {fmin(a.wall, b.wall), fmin(a.cpu, b.cpu)};
	return s;
}

static void fail(const char *what)
{
	fprintf(stderr, "chol: %s\n", what);
	exit(1);
}

/* row i of the lower triangle is column i of the upper one */
static cholmod_sparse *read_matrix(const char *name, cholmod_common *c)
{
	char line[256];
	FILE *in = fopen(name, "r");
	if (!in || !fgets(line, sizeof line, in) ||
	    strcmp(line, "%%MatrixMarket matrix coordinate real symmetric\n"))
		fail("want a real symmetric Matrix Market file");
	do
		if (!fgets(line, sizeof line, in))
			fail("the file ends before its sizes");
	while (line[0] == '%');
	long n, m, nz;
	if (sscanf(line, "%ld %ld %ld", &n, &m, &nz) != 3 || n != m)
		fail("want the sizes of a square matrix");
	cholmod_sparse *a = cholmod_l_allocate_sparse(n, n, nz, 1, 1, 1, CHOLMOD_REAL, c);
	int64_t *ptr = a->p, *row = a->i, at = 0;
	double *val = a->x;
	long col = 0;
	ptr[0] = 0;
	for (long k = 0; k < nz; k++) {
		char *rest;
		if (!fgets(line, sizeof line, in))
			fail("the file ends before its last value");
		long i = strtol(line, &rest, 10) - 1, j = strtol(rest, &rest, 10) - 1;
		double v = strtod(rest, NULL);
		if (j > i || i < col || i >= n)
			fail("want the lower triangle, rows ascending");
		while (col < i)
			ptr[++col] = at;
		if (v != 0) {
			row[at] = j;
			val[at++] = v;
		}
	}
	while (col < n)
		ptr[++col] = at;
	fclose(in);
	return a;
}

/* permutation of the nodes by METIS, spread over their degrees of freedom */
static int64_t *order_nodes(cholmod_sparse *a, cholmod_common *c)
{
	int64_t nodes = a->ncol / BLOCK, *ptr = a->p, *row = a->i, at = 0;
	cholmod_sparse *g = cholmod_l_allocate_sparse(nodes, nodes, ptr[a->ncol], 1, 1, 1, CHOLMOD_PATTERN, c);
	int64_t *gp = g->p, *gi = g->i, *seen = malloc(nodes * sizeof *seen);
	for (int64_t j = 0; j < nodes; j++)
		seen[j] = -1;
	for (int64_t j = 0; j < nodes; j++) {
		gp[j] = at;
		for (int64_t k = ptr[BLOCK * j]; k < ptr[BLOCK * (j + 1)]; k++) {
			int64_t i = row[k] / BLOCK;
			if (seen[i] != j) {
				seen[i] = j;
				gi[at++] = i;
			}
		}
	}
	gp[nodes] = at;
	g->sorted = 0;
	int64_t *of_node = malloc(nodes * sizeof *of_node), *of_dof = malloc(a->ncol * sizeof *of_dof);
	if (!cholmod_l_metis(g, NULL, 0, 1, of_node, c))
		fail("METIS failed");
	for (int64_t j = 0; j < nodes; j++)
		for (int d = 0; d < BLOCK; d++)
			of_dof[BLOCK * j + d] = BLOCK * of_node[j] + d;
	cholmod_l_free_sparse(&g, c);
	free(seen);
	free(of_node);
	return of_dof;
}

static cholmod_factor *analyse(cholmod_sparse *a, int by_node, cholmod_common *c)
{
	c->nmethods = 1;
	c->postorder = 1;
	if (!by_node) {
		c->method[0].ordering = CHOLMOD_METIS;
		return cholmod_l_analyze(a, c);
	}
	int64_t *perm = order_nodes(a, c);
	c->method[0].ordering = CHOLMOD_GIVEN;
	cholmod_factor *f = cholmod_l_analyze_p(a, perm, NULL, 0, c);
	free(perm);
	return f;
}

/* right-hand side k holds (i mod 17) + k at degree of freedom i */
static cholmod_dense *right_sides(int64_t n, int columns, cholmod_common *c)
{
	cholmod_dense *b = cholmod_l_allocate_dense(n, columns, n, CHOLMOD_REAL, c);
	double *x = b->x;
	for (int k = 0; k < columns; k++)
		for (int64_t i = 0; i < n; i++)
			x[k * n + i] = (double)(i % 17) + k;
	return b;
}

static stamp solve(cholmod_sparse *a, cholmod_factor *f, int columns, double *residual, cholmod_common *c)
{
	cholmod_dense *b = right_sides(a->ncol, columns, c);
	stamp t = now();
	cholmod_dense *x = cholmod_l_solve(CHOLMOD_A, f, b, c);
	t = since(t);
	if (residual) {
		double one[2] = {1, 0}, minus[2] = {-1, 0};
		double scale = cholmod_l_norm_sparse(a, 0, c) * cholmod_l_norm_dense(x, 0, c) + cholmod_l_norm_dense(b, 0, c);
		cholmod_l_sdmult(a, 0, minus, one, x, b, c);
		*residual = cholmod_l_norm_dense(b, 0, c) / scale;
	}
	cholmod_l_free_dense(&x, c);
	cholmod_l_free_dense(&b, c);
	return t;
}

static void print_stamp(const char *name, stamp t)
{
	printf("\"%s\": {\"wall\": %.6f, \"cpu\": %.6f}, ", name, t.wall, t.cpu);
}

int main(int argc, char **argv)
{
	if (argc != 5)
		fail("usage: chol FILE node|dof RHS REPEATS");
	int columns = atoi(argv[3]), repeats = atoi(argv[4]);
	cholmod_common c;
	cholmod_l_start(&c);
	c.supernodal = CHOLMOD_SUPERNODAL;
	c.final_ll = 1;
	cholmod_sparse *a = read_matrix(argv[1], &c);

	const stamp never = {INFINITY, INFINITY};
	stamp order = never, factor = never, one = never, many = {0, 0}, first = {0, 0};
	cholmod_factor *f = NULL;
	for (int k = 0; k < repeats; k++) {
		cholmod_l_free_factor(&f, &c);
		stamp t = now();
		f = analyse(a, argv[2][0] == 'n', &c);
		order = least(order, since(t));
	}
	double nnz = c.lnz, flops = c.fl, residual = 0;
	for (int k = 0; k <= repeats; k++) {
		stamp t = now();
		cholmod_l_factorize(a, f, &c);
		t = since(t);
		if (k == 0)
			first = t;
		factor = least(factor, t);
	}
	if (c.status != CHOLMOD_OK)
		fail("not positive definite");
	for (int k = 0; k <= repeats; k++)
		one = least(one, solve(a, f, 1, &residual, &c));
	if (columns > 0)
		many = solve(a, f, columns, NULL, &c);

	struct rusage used;
	getrusage(RUSAGE_SELF, &used);
	printf("{");
	print_stamp("analyse", order);
	print_stamp("first", first);
	print_stamp("factor", factor);
	print_stamp("one", one);
	print_stamp("many", many);
	printf("\"nnz\": %.0f, \"flops\": %.0f, \"peak\": %.1f, \"residual\": %.3g}\n", nnz, flops,
	       used.ru_maxrss / 1e3, residual);
	return 0;
}
