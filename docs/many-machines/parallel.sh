#!/usr/bin/env bash
# The parts of a series shared out by GNU parallel, over this machine or those that its
# --sshlogin names (they see the same folder, and archload is on their PATH):
#
#	parallel.sh 8 mine.toml --change "bridge.relief.depth = 0..0.4 by 0.02"
#	PARALLEL="--sshlogin bench1,bench2 --workdir $PWD" parallel.sh 8 mine.toml ...
#
# Given again, it goes on where it was stopped. What it joins lies in the folder whole.
set -euo pipefail
parts=${1:?want the number of parts, then the words of archload series}
shift
seq "$parts" | parallel --quote --halt soon,fail=1 archload series "$@" --part "{}/$parts" -o "parts/{}"
archload series --join parts/* -o whole
