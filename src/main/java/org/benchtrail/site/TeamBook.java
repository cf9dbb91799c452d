package org.benchtrail.site;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.List;

/** Which teams there are now, and who is in them. */
@ApplicationScoped
@Transactional
public class TeamBook {
    private final Teams teams;

    TeamBook(Teams teams) {
        this.teams = teams;
    }

    /** @param members accounts */
    public record Members(long id, String name, List<String> members) {
        public Members {
            members = List.copyOf(members);
        }
    }

    /** Those that are not closed, by name. */
    public List<Members> open() {
        return teams.all().stream()
                .filter(t -> !t.closed && t.id != null)
                .map(t -> new Members(t.id, t.name, List.of(t.members)))
                .toList();
    }
}
