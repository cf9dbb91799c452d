package org.benchtrail.ticket;

import java.time.Instant;
import java.time.ZoneId;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Stream;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Channel;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Policy;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.site.WorkingTime;

/**
 * A job sheet looked at: by whom and when, and how moments and people are written for them.
 *
 * @param zone the viewer's
 * @param workingTime of the site
 * @param names of people by account
 */
public record Viewing(
        JobSheet sheet,
        Actor viewer,
        ZoneId zone,
        Instant now,
        Policy policy,
        WorkingTime workingTime,
        Map<String, String> names)
        implements Telling {

    /** Accounts that a page on the sheet names. */
    public static Set<String> accounts(JobSheet sheet) {
        Set<String> accounts = new HashSet<>();
        sheet.facts().forEach(f -> accounts.add(f.stamp().person()));
        Stream.of(sheet.course().assignee(), sheet.course().offered())
                .filter(Objects::nonNull)
                .forEach(accounts::add);
        return accounts;
    }

    @Override
    public String name(String account) {
        return names.getOrDefault(account, account);
    }

    @Override
    public String time(Instant at) {
        return Times.text(at, zone);
    }

    /** Who recorded it, and when. */
    public String stamp(StandingFact<?> fact) {
        return stamp(fact.stamp());
    }

    public String stamp(Stamp stamp) {
        return who(stamp, names) + ", " + time(stamp.at());
    }

    /** Who speaks in an entry: a person by name, or the server and at whose act. */
    public static String who(Stamp stamp, Map<String, String> names) {
        String person = names.getOrDefault(stamp.person(), stamp.person());
        if (stamp.channel() != Channel.SERVER) {
            return person;
        }
        return stamp.behalf() == null ? "the server" : "the server, for " + person;
    }

    public EntryLine line(StandingFact<?> fact) {
        return EntryLine.of(fact, this);
    }

    public List<EntryLine> lines(List<? extends StandingFact<?>> facts) {
        return facts.stream().map(this::line).toList();
    }

    public boolean isViewersOwn() {
        return viewer.account().equals(sheet.course().assignee());
    }
}
