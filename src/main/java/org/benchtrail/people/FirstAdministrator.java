package org.benchtrail.people;

import io.quarkus.runtime.StartupEvent;
import jakarta.annotation.Priority;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Singleton;
import java.util.Optional;
import java.util.Set;
import org.benchtrail.core.method.Role;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jboss.logging.Logger;

/** Makes the first account of an empty server, so that somebody can sign in and make the others. */
@Singleton
class FirstAdministrator {
    private static final Logger LOG = Logger.getLogger(FirstAdministrator.class);

    /** After everything that may load accounts itself, which runs at the default of 2500. */
    private static final int LATE = 5000;

    private final PeopleActs acts;
    private final Optional<String> login;
    private final Optional<String> password;

    FirstAdministrator(
            PeopleActs acts,
            @ConfigProperty(name = "benchtrail.first-administrator") Optional<String> login,
            @ConfigProperty(name = "benchtrail.first-administrator-password") Optional<String> password) {
        this.acts = acts;
        this.login = login;
        this.password = password;
    }

    void atStart(@Observes @Priority(LATE) StartupEvent start) {
        if (!acts.nobodyYet()) {
            return;
        }
        if (login.isEmpty() || password.isEmpty()) {
            LOG.warn("There is no account yet: set BENCHTRAIL_FIRST_ADMINISTRATOR and"
                    + " BENCHTRAIL_FIRST_ADMINISTRATOR_PASSWORD, and start again");
            return;
        }
        acts.ensureAccount(login.get(), login.get(), Set.of(Role.ADMINISTRATOR), password.get());
        LOG.infof("made the first administrator, %s; change the password after signing in", login.get());
    }
}
