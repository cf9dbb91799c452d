package org.benchtrail.packaged;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

/** Clients that do the same again and again for a while, and how long each time took. */
final class SpeedClients {
    private static final double NANOS_OF_MS = 1e6;
    private static final double NANOS_OF_SECOND = 1e9;
    private static final int LEAST = 20;

    private SpeedClients() {}

    /** One time of one client; what stands around it is not timed. */
    interface Task {
        /** Does it and answers with how long it took, in nanoseconds. */
        long once() throws Exception;
    }

    /** What is timed as a whole. */
    interface Timed {
        void run() throws Exception;
    }

    static Task timed(Timed timed) {
        return () -> {
            long begun = System.nanoTime();
            timed.run();
            return System.nanoTime() - begun;
        };
    }

    /** Each client for so long, and at least some times; the first quarter of the time warms up and is not counted. */
    static SpeedFigures run(List<? extends Task> clients, int seconds) throws InterruptedException {
        ExecutorService pool = Executors.newFixedThreadPool(clients.size());
        try {
            long begun = System.nanoTime();
            long counted = begun + (long) (seconds * NANOS_OF_SECOND / 4);
            long end = counted + (long) (seconds * NANOS_OF_SECOND);
            List<Callable<List<Double>>> work = new ArrayList<>();
            for (Task client : clients) {
                work.add(() -> repeat(client, counted, end));
            }
            List<Double> all = new ArrayList<>();
            double perSecond = 0;
            for (Future<List<Double>> one : pool.invokeAll(work)) {
                List<Double> times = one.get();
                double busy = times.stream().mapToDouble(Double::doubleValue).sum();
                perSecond += times.size() * 1000 / busy;
                all.addAll(times);
            }
            return new SpeedFigures(all, perSecond);
        } catch (ExecutionException e) {
            throw new AssertionError(e.getCause());
        } finally {
            pool.shutdownNow();
        }
    }

    private static List<Double> repeat(Task client, long counted, long end) throws Exception {
        List<Double> times = new ArrayList<>();
        while (System.nanoTime() < end || times.size() < LEAST) {
            boolean warm = System.nanoTime() >= counted;
            double ms = client.once() / NANOS_OF_MS;
            if (warm) {
                times.add(ms);
            }
        }
        return times;
    }
}
