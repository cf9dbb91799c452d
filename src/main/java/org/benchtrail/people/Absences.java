package org.benchtrail.people;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Who is away, and who stands in. What waits for somebody who is away waits for the one who stands in as well; rights do not
 * pass over with it.
 */
@ApplicationScoped
@Transactional
public class Absences {
    private final AbsenceRows rows;

    Absences(AbsenceRows rows) {
        this.rows = rows;
    }

    /**
     * Who stands in for an account: its delegate, or the delegate's delegate if that is away as well.
     *
     * @return empty if the account is not away, or everybody down the line is
     */
    public Optional<String> standsInFor(String account, Instant now) {
        return standsIn(account, delegates(now));
    }

    /** Accounts that are away and whose place that person takes, by login. */
    public List<String> standsInOf(String person, Instant now) {
        return rows.standsInOf(person, now);
    }

    /** Everybody who is away now, with who stands in. */
    Map<String, Absence> delegates(Instant now) {
        Map<String, Absence> away = new HashMap<>();
        rows.at(now).forEach(absence -> away.putIfAbsent(absence.account, absence));
        return away;
    }

    static Optional<String> standsIn(String account, Map<String, Absence> away) {
        Set<String> seen = new HashSet<>();
        List<String> line = new ArrayList<>(List.of(account));
        while (seen.add(line.get(line.size() - 1))) {
            Absence absence = away.get(line.get(line.size() - 1));
            if (absence == null) {
                return line.size() == 1 ? Optional.empty() : Optional.of(line.get(line.size() - 1));
            }
            line.add(absence.delegate);
        }
        return Optional.empty();
    }
}
