package org.benchtrail.ticket.queue;

import java.util.List;

/** Places and devices named before, for the lists to choose from. */
public record NamedBefore(List<String> places, List<String> devices) {}
