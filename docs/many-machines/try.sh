#!/usr/bin/env bash
# Proves the two ways that one machine can prove: a series shared out by a Slurm array
# and by GNU parallel, with tasks killed in the middle, comes out the same to the byte as
# an uninterrupted one. Needs root and Debian's packages slurmctld, slurmd, slurm-client,
# munge and parallel, and installs nothing; it makes a cluster of this one machine for
# as long as it runs. Not part of the gate.
set -euo pipefail
here=$(cd "$(dirname "$0")" && pwd)
[ "$(id -u)" = 0 ] || { echo "want root, for the daemons of Slurm and munge" >&2; exit 1; }
for tool in slurmctld slurmd sbatch munged parallel; do
	command -v $tool >/dev/null || { echo "there is no $tool here" >&2; exit 1; }
done
work=$(mktemp -d)
chmod 755 "$work"
leave() {
	local status=$?
	scontrol shutdown >/dev/null 2>&1 || true
	pkill -f "munged --force --socket=$work" || true
	[ "$status" = 0 ] || tail -n 20 "$work"/*.log "$work"/slurm/*.txt 2>/dev/null || true
	rm -rf "$work"
	exit "$status"
}
trap leave EXIT

(cd "$here/../.." && go build -o "$work/bin/archload" ./cmd/archload)
export PATH=$work/bin:$PATH
series=(first --change "bridge.relief.depth = 0..0.14 by 0.02" --refine 0.5)
cd "$work"
archload series "${series[@]}" -o alone >/dev/null
echo "alone: $(($(wc -l <alone/series.csv) - 1)) rows"

# rows counts what the parts hold so far.
rows() { cat parts/*/part-*.csv 2>/dev/null | grep -vc ^point || true; }

# cluster FILE writes the configuration of a cluster of this machine.
cluster() {
	cat >"$1" <<-END
		ClusterName=try
		SlurmctldHost=$(hostname -s)
		SlurmUser=root
		StateSaveLocation=$work/state
		SlurmdSpoolDir=$work/spool
		SlurmctldPidFile=$work/slurmctld.pid
		SlurmdPidFile=$work/slurmd.pid
		SlurmctldLogFile=$work/slurmctld.log
		SlurmdLogFile=$work/slurmd.log
		AuthType=auth/munge
		AuthInfo=socket=$work/munge.socket
		ProctrackType=proctrack/pgid
		TaskPlugin=task/none
		SelectType=select/cons_tres
		SelectTypeParameters=CR_CPU
		ReturnToService=2
		NodeName=$(hostname -s) NodeAddr=127.0.0.1 CPUs=$(nproc) State=UNKNOWN
		PartitionName=all Nodes=ALL Default=YES MaxTime=INFINITE State=UP
	END
}

dd if=/dev/urandom of=munge.key bs=1024 count=1 status=none
chmod 600 munge.key
munged --force --socket="$work/munge.socket" --key-file="$work/munge.key" --pid-file="$work/munge.pid" \
	--log-file="$work/munge.log" --seed-file="$work/munge.seed"
mkdir state spool slurm
cluster slurm.conf
export SLURM_CONF=$work/slurm.conf
slurmctld
slurmd
for _ in $(seq 60); do
	sinfo -h -o %T 2>/dev/null | grep -q idle && break
	sleep 1
done
cd slurm
job=$(sbatch --parsable --array=1-4 --cpus-per-task=1 --export=ALL,SLURM_ARRAY_TASK_COUNT_ALL=4 "$here/slurm.sh" "${series[@]}")
until [ -s parts/1/part-1-of-4.jsonl ]; do sleep 0.2; done
scontrol requeue "${job}_1" && echo "slurm: task 1 was killed and queued again"
while squeue -h -j "$job" | grep -q .; do
	scontrol release "${job}_1" 2>/dev/null || true
	sleep 1
done
archload series --join parts/* -o whole >/dev/null
cmp whole/series.csv ../alone/series.csv && cmp whole/series.jsonl ../alone/series.jsonl
echo "slurm: the same to the byte"

mkdir ../parallel && cd ../parallel
setsid "$here/parallel.sh" 4 "${series[@]}" >/dev/null 2>&1 &
until [ "$(rows)" -gt 0 ]; do sleep 0.2; done
kill -KILL -- "-$!"
wait "$!" 2>/dev/null || true
pkill -KILL -f "archload series first" || true # parallel gives each task a group of its own
echo "parallel: killed with $(rows) of 8 rows"
"$here/parallel.sh" 4 "${series[@]}" >/dev/null
cmp whole/series.csv ../alone/series.csv && cmp whole/series.jsonl ../alone/series.jsonl
echo "parallel: the same to the byte"
