"""Prints every figure as one JSON object; aims stand beside the figures, and nothing is asserted.

    python -m tests.benchmarks [--quick] [--ears]
"""

import argparse
import json
import sys

from tests.benchmarks import FULL, QUICK, measure


def main():
    parser = argparse.ArgumentParser(prog="python -m tests.benchmarks")
    parser.add_argument("--quick", action="store_true", help="small counts: whether it runs, not how fast it is")
    parser.add_argument("--ears", action="store_true", help="also commands and sentences over many voices; minutes")
    options = parser.parse_args()
    json.dump(measure(QUICK if options.quick else FULL, ears=options.ears), sys.stdout, indent=1)
    sys.stdout.write("\n")


if __name__ == "__main__":
    main()
