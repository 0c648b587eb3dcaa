/*
 * The inner arithmetic of a season, as lib/distribution/fixed-equipment-season has it: what an hour of running is worth in
 * each bin, and the run time per Btu of load by month. One thread, IEEE, in the same runs of bins (a month by day or by
 * night), columns apart, the sum in a second loop so that the compiler may vectorize the first. The line of the weather
 * differs from draw to draw, as the temperatures of the places do.
 * Usage: draw-bins DRAWS BINS ROUNDS. Prints seconds of the fastest round and a checksum.
 */
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

static double now(void) {
  struct timespec t;
  clock_gettime(CLOCK_MONOTONIC, &t);
  return (double)t.tv_sec + 1e-9 * (double)t.tv_nsec;
}

int main(int argc, char **argv) {
  if (argc < 4) return 2;
  int draws = atoi(argv[1]), bins = atoi(argv[2]), rounds = atoi(argv[3]);
  double *restrict t = malloc(sizeof(double) * bins), *restrict sun = malloc(sizeof(double) * bins);
  double *restrict share = malloc(sizeof(double) * bins), *restrict hours = malloc(sizeof(double) * bins);
  int *restrict starts = malloc(sizeof(int) * (bins + 1)), *restrict month = malloc(sizeof(int) * bins);
  double *restrict ground = malloc(sizeof(double) * bins), *restrict night = malloc(sizeof(double) * bins);
  int runs = 0;
  for (int b = 0; b < bins; b++) {
    int m = (12 * b) / bins, isNight = (36 * b) / bins % 3 == 2;
    t[b] = -20.0 + 80.0 * b / bins;
    sun[b] = isNight ? 0.0 : 3.0 * (b % 11);
    share[b] = 1.0 / bins;
    if (runs > 0 && month[runs - 1] == m && night[runs - 1] == isNight) continue;
    starts[runs] = b;
    month[runs] = m;
    ground[runs] = 45.0 + m;
    night[runs++] = isNight;
  }
  starts[runs] = bins;
  double best = 1e9, check = 0;
  for (int r = 0; r < rounds; r++) {
    double start = now();
    check = 0;
    for (int k = 0; k < draws; k++) {
      double wobble = (double)k / draws, capacity = 60000.0 * (0.95 + 0.1 * wobble);
      double perCapacity = 0.8 + 0.1 * wobble, constant = -9000.0;
      double outdoor = 120.0 + wobble, perSun = 15.0 + wobble, perGround = 20.0 - wobble, perNight = -80.0 + wobble;
      double base = perCapacity * capacity + constant, least = 0.05 * capacity, byMonth[12] = {0};
      for (int r = 0; r < runs; r++) {
        double inRun = base + perGround * ground[r] + perNight * night[r], sum = 0;
        for (int b = starts[r]; b < starts[r + 1]; b++) {
          double useful = inRun + outdoor * t[b] + perSun * sun[b];
          hours[b] = share[b] / (useful > least ? useful : least);
        }
        for (int b = starts[r]; b < starts[r + 1]; b++) sum += hours[b];
        byMonth[month[r]] += sum;
      }
      for (int m = 0; m < 12; m++) check += byMonth[m];
    }
    double took = now() - start;
    if (took < best) best = took;
  }
  printf("%.9f %.17g\n", best, check);
  return 0;
}
