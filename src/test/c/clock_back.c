/* Whatever is started with this in LD_PRELOAD sees the time of day an hour back; what measures how long something takes goes on as it was. */
#define _GNU_SOURCE
#include <dlfcn.h>
#include <sys/time.h>
#include <time.h>

static const time_t BACK_S = 3600;

int clock_gettime(clockid_t which, struct timespec *now) {
    static int (*own)(clockid_t, struct timespec *);
    if (!own) {
        own = (int (*)(clockid_t, struct timespec *)) dlsym(RTLD_NEXT, "clock_gettime");
    }
    int result = own(which, now);
    if (result == 0 && (which == CLOCK_REALTIME || which == CLOCK_REALTIME_COARSE)) {
        now->tv_sec -= BACK_S;
    }
    return result;
}

int gettimeofday(struct timeval *now, void *zone) {
    struct timespec exact;
    (void) zone;
    int result = clock_gettime(CLOCK_REALTIME, &exact);
    now->tv_sec = exact.tv_sec;
    now->tv_usec = exact.tv_nsec / 1000;
    return result;
}

time_t time(time_t *now) {
    struct timespec exact;
    clock_gettime(CLOCK_REALTIME, &exact);
    if (now) {
        *now = exact.tv_sec;
    }
    return exact.tv_sec;
}
