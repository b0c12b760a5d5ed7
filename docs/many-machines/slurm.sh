#!/usr/bin/env bash
#SBATCH --job-name=archload-series
#SBATCH --array=1-8
#SBATCH --cpus-per-task=2
#SBATCH --output=%x-%a.txt
#SBATCH --requeue
# One part of a series in each task of an array job. Submit from a folder that all
# machines see, where the case lies too:
#
#	sbatch slurm.sh mine.toml --change "bridge.relief.depth = 0..0.4 by 0.02"
#
# A task that is killed and started again goes on where it was; so does the same command
# given again for the tasks that are missing (sbatch --array=3,7 ...). Then join:
#
#	archload series --join parts/* -o whole
set -euo pipefail
part=${SLURM_ARRAY_TASK_ID:?want this run by sbatch}
parts=${SLURM_ARRAY_TASK_COUNT_ALL:-8} # the number of parts that the whole series has, also when some are run again
exec archload series "$@" --part "$part/$parts" -o "parts/$part"
