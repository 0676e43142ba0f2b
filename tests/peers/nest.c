/* The load of a nest in plain C: what the calculation costs without units, checks or errors.
   Prints lines of "work, nanoseconds", and "sum, newtons" by which the loads are compared. */

#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#define HEIGHTS 10000

typedef struct { double touch, free, solid, rate; } Coil;
typedef struct { double load, deflection, to_solid; int touching; } CoilState;
typedef struct { double height, load, rate; int solid; CoilState coils[8]; } State;

__attribute__((noinline)) double load_at(const Coil *coils, int count, double height) {
    double load = 0.0;
    for (int i = 0; i < count; i++) {
        double shorter = coils[i].touch - height;
        load += coils[i].rate * (shorter > 0.0 ? shorter : 0.0);
    }
    return load;
}

/* Coil by coil, so that the compiler can take several heights at once. */
__attribute__((noinline)) void loads_at(const Coil *coils, int count, const double *restrict heights,
                                        double *restrict loads, int many) {
    for (int j = 0; j < many; j++) loads[j] = 0.0;
    for (int i = 0; i < count; i++) {
        double touch = coils[i].touch, rate = coils[i].rate;
        for (int j = 0; j < many; j++) {
            double shorter = touch - heights[j];
            loads[j] += rate * (shorter > 0.0 ? shorter : 0.0);
        }
    }
}

__attribute__((noinline)) void state_at(const Coil *coils, int count, double height, State *state) {
    double load = 0.0, rate = 0.0, stop = 0.0;
    for (int i = 0; i < count; i++) {
        double shorter = coils[i].touch - height;
        shorter = shorter > 0.0 ? shorter : 0.0;
        double carried = coils[i].rate * shorter;
        double solid = coils[i].touch - coils[i].free + coils[i].solid;
        load += carried;
        if (shorter > 0.0) rate += coils[i].rate;
        if (solid > stop) stop = solid;
        state->coils[i] = (CoilState){carried, shorter, coils[i].free - shorter - coils[i].solid,
                                      shorter > 0.0};
    }
    state->height = height, state->load = load, state->rate = rate, state->solid = height <= stop;
}

static double now(void) {
    struct timespec time;
    clock_gettime(CLOCK_MONOTONIC, &time);
    return 1e9 * (double)time.tv_sec + (double)time.tv_nsec;
}

/* The quickest of many rounds, a call. */
#define QUICKEST(name, rounds, calls, work)                        \
    do {                                                           \
        double best = 1e300;                                       \
        for (int round = 0; round < (rounds); round++) {           \
            double start = now();                                  \
            work;                                                  \
            double took = (now() - start) / (calls);               \
            if (took < best) best = took;                          \
        }                                                          \
        printf("%s, %.4f\n", name, best);                          \
    } while (0)

int main(void) {
    static double heights[HEIGHTS], loads[HEIGHTS];
    for (int j = 0; j < HEIGHTS; j++) heights[j] = 0.2 + 1e-5 * j;
    Coil nest[2] = {{0.3, 0.3, 0.16, 400e3}, {0.29, 0.29, 0.15, 190e3}};
    volatile double sink = 0.0;
    State state;

    QUICKEST("one call", 2000, 1000.0, for (int j = 0; j < 1000; j++) sink = load_at(nest, 2, heights[j]));
    QUICKEST("slice", 2000, (double)HEIGHTS, loads_at(nest, 2, heights, loads, HEIGHTS));
    double sum = 0.0;
    for (int j = 0; j < HEIGHTS; j++) sum += loads[j];
    printf("sum, %.17g\n", sum);
    QUICKEST("state", 2000, 1000.0, for (int j = 0; j < 1000; j++) {
        state_at(nest, 2, heights[j], &state);
        sink = state.load;
    });

    for (int count = 1; count <= 10000; count *= 10) {
        Coil *coils = malloc(sizeof(Coil) * (size_t)count);
        char name[32];
        for (int i = 0; i < count; i++) coils[i] = (Coil){0.3 - 1e-6 * i, 0.3 - 1e-6 * i, 0.15, 1e3};
        snprintf(name, sizeof name, "coils %d", count);
        QUICKEST(name, count < 1000 ? 500 : 20, 1000.0, loads_at(coils, count, heights, loads, 1000));
        free(coils);
    }
    (void)sink;
    return 0;
}
