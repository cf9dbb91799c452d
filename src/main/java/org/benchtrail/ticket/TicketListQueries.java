package org.benchtrail.ticket;

import io.quarkus.runtime.Startup;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Standing;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.desk.Opened;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;
import org.jspecify.annotations.Nullable;

/** Lists of tickets: the queue, and those that are like some words. */
@Startup
@ApplicationScoped
@Transactional
public class TicketListQueries {
    /** Shorter words tell too little to be alike by. */
    private static final int SHORTEST_ALIKE = 4;

    private final EntityManager database;
    private final SqlText text;

    TicketListQueries(EntityManager database) {
        this.database = database;
        text = SqlText.of(TicketListQueries.class)
                .having(
                        "page",
                        "total",
                        "counted",
                        "after",
                        "at the step",
                        "of the category",
                        "of the assignee",
                        "of nobody")
                .having("at the place", "on the device", "held", "not held", "waiting for somebody")
                .having(
                        "due from",
                        "due before",
                        "with the words",
                        "common",
                        "fitting",
                        "among",
                        "alike",
                        "of the device",
                        "places",
                        "devices",
                        "contacts",
                        "reporters");
    }

    /** One page, and how many tickets the filter fits: {@link QueuePart#MOST_COUNTED} at most, or that there are more. */
    public QueuePart queue(QueueFilter filter, Actor actor) {
        Permissions.require(Permission.SEE_TICKETS, actor);
        Narrowed narrowed = narrowed(filter);
        long counted = narrowed.counted().orElseGet(() -> counted(narrowed).value(Long.class));
        List<TicketLine> found = page(filter, narrowed).rows(TicketLine.class);
        boolean more = found.size() > filter.size();
        List<TicketLine> shown = more ? found.subList(0, filter.size()) : found;
        Cursor last = more ? Cursor.of(shown.get(shown.size() - 1), filter.sorting()) : null;
        return new QueuePart(shown, last, counted);
    }

    /** The tickets of one page, without looking what comes after it. */
    public List<TicketLine> lines(QueueFilter filter, Actor actor) {
        Permissions.require(Permission.SEE_TICKETS, actor);
        List<TicketLine> found = page(filter).rows(TicketLine.class);
        return found.subList(0, Math.min(found.size(), filter.size()));
    }

    /** How many tickets the filter fits, however many there are. */
    public long total(QueueFilter filter, Actor actor) {
        Permissions.require(Permission.SEE_TICKETS, actor);
        return total(filter).value(Long.class);
    }

    Sql total(QueueFilter filter) {
        Narrowed narrowed = narrowed(filter);
        return Sql.of(database, text.statement("total", narrowed.conditions)).with(narrowed.values);
    }

    /** One more than is told at most, so that it is seen whether there are more. */
    private Sql counted(Narrowed narrowed) {
        String statement = text.statement("counted", narrowed.conditions)
                .replace("{order}", narrowed.seldom ? "" : "order by due, serial");
        return Sql.of(database, statement).with(narrowed.values).with("most", QueuePart.MOST_COUNTED + 1);
    }

    /** One line more than a page has, so that it is seen whether there is a next one. */
    private Sql page(QueueFilter filter, Narrowed narrowed) {
        Cursor after = filter.after();
        if (after != null) {
            narrowed.by("after").values.putAll(after.values());
        }
        String statement = text.statement("page", narrowed.conditions)
                .replace("{after}", filter.sorting().after())
                .replace("{order}", filter.sorting().columns());
        return Sql.of(database, statement).with(narrowed.values).with("most", filter.size() + 1);
    }

    Sql counted(QueueFilter filter) {
        return counted(narrowed(filter));
    }

    Sql page(QueueFilter filter) {
        return page(filter, narrowed(filter));
    }

    /** The conditions that a filter asks for, the values in them, and what was found out of its words before. */
    private static final class Narrowed {
        private final List<String> conditions = new ArrayList<>();
        private final Map<String, Object> values = new HashMap<>();
        /** Whether few of the newest have the words. */
        private boolean seldom;
        /** Tickets that have the words, whatever else is asked for; all of them, if they are few. */
        private int fitting;

        private boolean few;

        /** Known where nothing but words is asked for, and those that were looked up are all, or more than are told. */
        OptionalLong counted() {
            boolean known = few || fitting > QueuePart.MOST_COUNTED;
            return known && conditions.size() == 1
                    ? OptionalLong.of(Math.min(fitting, QueuePart.MOST_COUNTED + 1))
                    : OptionalLong.empty();
        }

        Narrowed by(String condition) {
            conditions.add(condition);
            return this;
        }

        Narrowed by(String condition, String name, Object value) {
            values.put(name, value);
            return by(condition);
        }
    }

    private Narrowed narrowed(QueueFilter filter) {
        Narrowed narrowed = new Narrowed();
        narrowed.values.put("standing", filter.standing().name());
        if (filter.step() != null) {
            narrowed.by("at the step", "step", filter.step().name());
        }
        if ("-".equals(filter.assignee())) {
            narrowed.by("of nobody");
        } else if (filter.assignee() != null) {
            narrowed.by("of the assignee", "assignee", filter.assignee());
        }
        if (filter.category() != null) {
            narrowed.by("of the category", "category", filter.category().name());
        }
        if (filter.place() != null) {
            narrowed.by("at the place", "place", filter.place());
        }
        if (filter.device() != null) {
            narrowed.by("on the device", "device", filter.device());
        }
        if (filter.held() != null) {
            narrowed.by(filter.held() ? "held" : "not held");
        }
        if (filter.waiting()) {
            narrowed.by("waiting for somebody");
        }
        narrow(narrowed, filter.due());
        List<String> words = SearchWords.beginnings(filter.text(), 1);
        if (!words.isEmpty()) {
            narrow(narrowed, filter.standing(), String.join(" & ", words));
        }
        return narrowed;
    }

    /** By the tickets that have them, if they are few; else each is asked as it comes. */
    private void narrow(Narrowed narrowed, Standing standing, String words) {
        narrowed.seldom = common(words).value(Long.class) < SearchWords.OFTEN;
        List<Fitting> found = narrowed.seldom ? fitting(words).rows(Fitting.class) : List.of();
        Integer[] fitting = found.stream()
                .filter(f -> f.standing() == standing)
                .map(Fitting::serial)
                .toArray(Integer[]::new);
        narrowed.fitting = fitting.length;
        narrowed.few = narrowed.seldom && found.size() < SearchWords.FEW;
        if (narrowed.few) {
            narrowed.by("among", "serials", fitting);
        } else {
            narrowed.by("with the words", "words", words);
        }
    }

    /** A ticket that has the words. */
    record Fitting(int serial, Standing standing) {}

    Sql common(String words) {
        return Sql.of(database, text.statement("common")).with("words", words);
    }

    Sql fitting(String words) {
        return Sql.of(database, text.statement("fitting")).with("words", words).with("most", SearchWords.FEW);
    }

    private static void narrow(Narrowed narrowed, @Nullable DueWithin due) {
        if (due != null && due.from() != null) {
            narrowed.by("due from", "dueFrom", due.from());
        }
        if (due != null && due.before() != null) {
            narrowed.by("due before", "dueBefore", due.before());
        }
    }

    /** The first of these numbers that a ticket has. */
    public Optional<TicketNumber> numbered(List<TicketNumber> meant, Actor actor) {
        Permissions.require(Permission.SEE_TICKETS, actor);
        if (meant.isEmpty()) {
            return Optional.empty();
        }
        List<Integer> serials = meant.stream().map(TicketNumber::serial).toList();
        List<Integer> there = Sql.of(database, text.statement("numbered"))
                .with("serials", serials)
                .values(Integer.class);
        return meant.stream().filter(number -> there.contains(number.serial())).findFirst();
    }

    /** Tickets whose words are most like these, other than the one given; at most five, the likest first. */
    public List<TicketLine> alike(String words, int exceptSerial, Actor actor) {
        Permissions.require(Permission.SEE_TICKETS, actor);
        return SearchWords.beginnings(words, SHORTEST_ALIKE).isEmpty()
                ? List.of()
                : alike(words, exceptSerial).rows(TicketLine.class);
    }

    Sql alike(String words, int exceptSerial) {
        return Sql.of(database, text.statement("alike"))
                .with("words", SearchWords.beginnings(words, SHORTEST_ALIKE).toArray(String[]::new))
                .with("few", SearchWords.FEW)
                .with("except", exceptSerial);
    }

    /** Other tickets of the device of that name at that place, the latest first; at most three. */
    public List<Integer> ofDevice(Opened report, int exceptSerial, Actor actor) {
        Permissions.require(Permission.SEE_TICKETS, actor);
        return ofDevice(report.device(), report.place(), exceptSerial).values(Integer.class);
    }

    Sql ofDevice(String device, String place, int exceptSerial) {
        return Sql.of(database, text.statement("of the device"))
                .with("device", device)
                .with("place", place)
                .with("except", exceptSerial);
    }

    /** Places that a ticket has named, for the list to choose from; at most 200. */
    public List<String> places(Actor actor) {
        Permissions.require(Permission.SEE_TICKETS, actor);
        return named("places").values(String.class);
    }

    /** Devices that a ticket has named, for the list to choose from; at most 200. */
    public List<String> devices(Actor actor) {
        Permissions.require(Permission.SEE_TICKETS, actor);
        return named("devices").values(String.class);
    }

    /** How that person was reached before; empty if nobody of the name has reported yet, or several ways are kept. */
    public Optional<String> contact(String requester, Actor actor) {
        Permissions.require(Permission.SEE_TICKETS, actor);
        List<String> kept = named("contacts").with("name", requester).values(String.class);
        return kept.size() == 1 ? Optional.of(kept.get(0)) : Optional.empty();
    }

    /** Who has always reported what was wrong with that device; empty if nobody has yet, or several people have. */
    public Optional<String> reporter(String device, Actor actor) {
        Permissions.require(Permission.SEE_TICKETS, actor);
        List<String> names = named("reporters")
                .with("device", device.toLowerCase(Locale.ROOT))
                .values(String.class);
        return names.size() == 1 ? Optional.of(names.get(0)) : Optional.empty();
    }

    Sql named(String what) {
        return Sql.of(database, text.statement(what));
    }
}
