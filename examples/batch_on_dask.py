#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""batch_estimate.py on many machines: the same table, its rows as partitions on the workers of a running Dask scheduler.

The workers need the package tunnelside, of the same version. The estimates are the same, to the last bit, as batch_estimate.py writes.
"""

import argparse
import collections

import batch_estimate
from distributed import Client, KilledWorker

AHEAD = 3  # partitions under way for each worker: keeps them busy, and bounds the memory here


def main():
    parser = batch_estimate.Parser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("scheduler", help="its address, such as tcp://10.0.0.5:8786")
    parser.add_argument("sides", metavar="SIDES", help="CSV of sides, as batch_estimate.py reads it")
    parser.add_argument("-o", "--output", metavar="ESTIMATES", required=True, help="CSV of estimates, written whole or not at all")
    parser.add_argument("--figures", default=batch_estimate.FIGURES, help="as for batch_estimate.py")
    options = parser.parse_args()
    if batch_estimate.is_same_file(options.sides, options.output):
        parser.error("SIDES and ESTIMATES must be different files")
    asked = batch_estimate.split_figures(options.figures)
    with open(options.sides, **batch_estimate.READ) as source, Client(options.scheduler, timeout=10) as client:
        client.upload_file(batch_estimate.__file__)

        def estimates(chunks, header, asked):
            under_way = collections.deque()
            for chunk in chunks:
                rows = [cells for _, cells in chunk]
                under_way.append((chunk, client.submit(batch_estimate.estimate, header, asked, rows, pure=False)))
                if len(under_way) >= AHEAD * max(1, len(client.scheduler_info()["workers"])):
                    yield written(under_way)
            while under_way:
                yield written(under_way)

        def written(under_way):
            chunk, future = under_way.popleft()
            return chunk, future.result()

        with batch_estimate.whole_file(options.output) as made, open(made, "w", **batch_estimate.WRITTEN) as target:
            return 1 if batch_estimate.run(source, target, asked, options.sides, estimates) else 0


def command():
    try:
        return main()
    except (batch_estimate.Unusable, KilledWorker, OSError) as error:
        batch_estimate.say(f"batch_on_dask: {error}")
    return 1


if __name__ == "__main__":
    batch_estimate.as_program(command)
