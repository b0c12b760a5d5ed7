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
#include "common.h"

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
