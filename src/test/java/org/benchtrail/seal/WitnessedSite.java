package org.benchtrail.seal;

import io.quarkus.arc.Arc;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.junit.QuarkusMock;
import java.time.Clock;
import java.util.List;
import org.benchtrail.core.integrity.WitnessPolicy.Party;

/** A site whose policy names witnesses, until the test ends. */
public final class WitnessedSite {
    private WitnessedSite() {}

    /** The key of the log, as a witness is told it. */
    public static String key() {
        LogKeys keys = Arc.container().instance(LogKeys.class).get();
        return QuarkusTransaction.requiringNew()
                .call(() -> keys.known().good().iterator().next());
    }

    /** From now on these are asked, and no others. */
    public static void asks(Party... witnesses) {
        Asking asking = new Asking(
                Arc.container().instance(LogRows.class).get(),
                Arc.container().instance(WitnessRows.class).get(),
                Arc.container().instance(SealConfig.class).get(),
                Arc.container().instance(Clock.class).get(),
                List.of(witnesses));
        QuarkusMock.installMockForType(asking, Witnessing.class);
    }

    private static final class Asking extends Witnessing {
        private final List<Party> asked;

        Asking(LogRows rows, WitnessRows kept, SealConfig config, Clock clock, List<Party> asked) {
            super(rows, kept, config, clock);
            this.asked = asked;
        }

        @Override
        List<Party> witnesses() {
            return asked;
        }
    }
}
