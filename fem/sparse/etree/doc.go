// Package etree finds how the columns of a sparse factor hang together: the elimination
// tree of a matrix whose nodes are eliminated in a given order, and in it the supernodes,
// runs of columns with one structure, of which those that save time are merged. It knows
// nodes, edges and a model of the run time, but no values.
//
//	nodes, at := etree.Supernodes(g, order, last) // children before parents; place -> node
//	holder := etree.Merge(nodes, root, 6)         // which supernode holds the columns of each
//
// The tree and the structure of L follow J. W. H. Liu, The role of elimination trees in
// sparse factorization, SIAM J. Matrix Anal. Appl. 11 (1990); merging at the price of some
// explicit zeros C. Ashcraft, R. Grimes, The influence of relaxed supernode partitions on
// the multifrontal method, ACM Trans. Math. Softw. 15 (1989). Both from memory.
package etree
