#!/usr/bin/env bash
# Builds the C++ program that the tension simulation is compared with, into bench/cpp/build.
set -euo pipefail
cd "$(dirname "$0")"
mkdir -p build
g++ -std=c++17 -O3 -march=native -Wall -Wextra -o build/tension tension.cpp
