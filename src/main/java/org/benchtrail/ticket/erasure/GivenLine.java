package org.benchtrail.ticket.erasure;

import java.time.ZoneId;
import java.util.List;
import org.benchtrail.ticket.GivenFiles;
import org.benchtrail.ticket.Times;

/** A file of a ticket that somebody took, as a page tells it. */
public record GivenLine(String file, String person, String at) {
    static List<GivenLine> of(List<GivenFiles.Given> given, ZoneId zone) {
        return given.stream()
                .map(g -> new GivenLine(g.file(), g.person(), Times.text(g.at(), zone)))
                .toList();
    }
}
