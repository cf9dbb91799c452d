package org.benchtrail.core.site;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * What a site decided, and since when. At each moment the latest decision counts of those that were in force by then: a later one
 * replaces what earlier ones said of the time from its beginning on, and nothing of the time before.
 */
public final class SiteHistory {
    private final List<Version> versions;
    private final WorkingTime workingTime;

    /**
     * A decision.
     *
     * @param number 0 for what counts from the beginning; grows with every decision
     * @param from when it comes into force
     */
    public record Version(int number, Instant from, SiteRules rules) {}

    /** @param versions by their number, the first in force from the beginning; none begins before it was decided */
    public SiteHistory(List<Version> versions) {
        this.versions = List.copyOf(versions);
        if (!versions.get(0).from().equals(Instant.MIN)) {
            throw new IllegalArgumentException("the first version is in force from the beginning");
        }
        List<WorkingTime.Part> parts = new ArrayList<>();
        versions.stream().sorted(Comparator.comparing(Version::from)).forEach(v -> {
            WorkCalendar calendar = at(v.from()).rules().calendar();
            if (parts.isEmpty() || !parts.get(parts.size() - 1).calendar().equals(calendar)) {
                parts.add(new WorkingTime.Part(v.from(), calendar));
            }
        });
        workingTime = new WorkingTime(parts);
    }

    public static SiteHistory of(SiteRules rules) {
        return new SiteHistory(List.of(new Version(0, Instant.MIN, rules)));
    }

    /** What is in force at that moment. */
    public Version at(Instant moment) {
        for (int i = versions.size() - 1; i > 0; i--) {
            if (!versions.get(i).from().isAfter(moment)) {
                return versions.get(i);
            }
        }
        return versions.get(0);
    }

    public List<Version> versions() {
        return versions;
    }

    public int latest() {
        return versions.get(versions.size() - 1).number();
    }

    /** As it was before any decision after that number. */
    public SiteHistory upTo(int number) {
        return number >= latest()
                ? this
                : new SiteHistory(
                        versions.stream().filter(v -> v.number() <= number).toList());
    }

    public WorkingTime workingTime() {
        return workingTime;
    }
}
