/* The daily step of water and breakdown as plain C: the yardstick of the day_steps_per_s figure.
   gcc -O3 -march=native daySteps.c -o daySteps -lm; prints nanoseconds of processor time a day (median of runs) and the last sum.
   Reads doubles from standard input: days, then rain, maximum and minimum temperature of each day, and the radiation
   of each day of the year (367 entries). */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

static double now(void) {
  struct timespec t;
  clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &t);
  return t.tv_sec * 1e9 + t.tv_nsec;
}

static int byTime(const void *a, const void *b) {
  double x = *(const double *)a, y = *(const double *)b;
  return x < y ? -1 : x > y;
}

/* One pass: reference evapotranspiration, snow, soil temperature, topsoil water, breakdown. */
static double run(int days, const double *rain, const double *tmax, const double *tmin, const int *slot,
                  const double *ra, double tew, double rew, double k, double q10, double b, double melt,
                  double snowStops, double *sums) {
  double depletion = tew / 2, snow = 0, sum = 0, window[11] = {0}, windowSum = 0;
  sums[0] = 0;
  for (int i = 0; i < days; i++) {
    double mean = (tmax[i] + tmin[i]) / 2;
    double et0 = 0.0023 * (mean + 17.8) * sqrt(tmax[i] - tmin[i]) * 0.408 * ra[slot[i]];
    if (et0 < 0) et0 = 0;
    double water = 0;
    if (mean <= 0) {
      snow += rain[i];
    } else {
      double thaw = melt * mean < snow ? melt * mean : snow;
      snow -= thaw;
      water = rain[i] + thaw;
    }
    windowSum += mean - window[i % 11];
    window[i % 11] = mean;
    double soil = windowSum / (i < 10 ? i + 1 : 11);
    double wetted = depletion > water ? depletion - water : 0;
    double kr = wetted <= rew ? 1 : (tew - wetted) / (tew - rew);
    double e = k * kr * et0;
    if (e > tew - wetted) e = tew - wetted;
    depletion = wetted + e;
    double r = 1 - (wetted + depletion) / (2 * tew);
    if (soil > 0 && snow <= snowStops && r > 0) sum += pow(q10, (soil - 20) / 10) * pow(r, b);
    sums[i + 1] = sum;
  }
  return sum;
}

int main(void) {
  double n;
  if (fread(&n, sizeof n, 1, stdin) != 1) return 1;
  int days = (int)n;
  double *columns = malloc(sizeof(double) * (3 * (size_t)days + 367));
  int *slot = malloc(sizeof(int) * days);
  double *sums = malloc(sizeof(double) * (days + 1));
  if (fread(columns, sizeof(double), 3 * (size_t)days + 367, stdin) != 3 * (size_t)days + 367) return 1;
  for (int i = 0; i < days; i++) slot[i] = 1 + i % 365;
  enum { RUNS = 61 };
  double times[RUNS], last = 0, parameters[8];
  if (fread(parameters, sizeof(double), 7, stdin) != 7) return 1;
  for (int i = 0; i < RUNS; i++) {
    double start = now();
    last = run(days, columns, columns + days, columns + 2 * days, slot, columns + 3 * days, parameters[0],
               parameters[1], parameters[2], parameters[3], parameters[4], parameters[5], parameters[6], sums);
    times[i] = (now() - start) / days;
  }
  qsort(times, RUNS, sizeof(double), byTime);
  printf("%.3f %.10f\n", times[RUNS / 2], last);
  return 0;
}
