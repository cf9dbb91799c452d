package org.benchtrail.platform.nodes;

import java.util.Arrays;

/** A release of Benchtrail, such as 0.1.0; what is no number in it counts as 0. */
record Release(String name) implements Comparable<Release> {
    @Override
    public int compareTo(Release other) {
        return Arrays.compare(parts(), other.parts());
    }

    private int[] parts() {
        return Arrays.stream(name.split("[.-]"))
                .mapToInt(part -> part.matches("\\d{1,9}") ? Integer.parseInt(part) : 0)
                .toArray();
    }
}
