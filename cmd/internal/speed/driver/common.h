/* What the drivers share: the clock, a matrix from a file, METIS and CHOLMOD's analysis. */
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
	fprintf(stderr, "driver: %s\n", what);
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

static void print_stamp(const char *name, stamp t)
{
	printf("\"%s\": {\"wall\": %.6f, \"cpu\": %.6f}, ", name, t.wall, t.cpu);
}
