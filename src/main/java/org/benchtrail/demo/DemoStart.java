package org.benchtrail.demo;

import io.quarkus.runtime.StartupEvent;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** With the embedded database: loads the demo and says where it is and who can sign in. */
@ApplicationScoped
public class DemoStart {
    private static final String PEOPLE = "people.yaml";
    private static final List<String> FILES = List.of(
            "ups-office.yaml",
            "drive-warning.yaml",
            "array-member.yaml",
            "hot-desktop.yaml",
            "fast-clock.yaml",
            "ended.yaml");

    private final Scenarios scenarios;
    private final SiteFile site;
    private final PracticeFile practice;
    private final boolean demo;
    private final String host;
    private final int port;
    private final boolean serves;

    DemoStart(
            Scenarios scenarios,
            SiteFile site,
            PracticeFile practice,
            @ConfigProperty(name = "benchtrail.demo", defaultValue = "false") boolean demo,
            @ConfigProperty(name = "quarkus.http.host") String host,
            @ConfigProperty(name = "quarkus.http.port", defaultValue = "8080") int port,
            @ConfigProperty(name = "quarkus.http.host-enabled", defaultValue = "true") boolean serves) {
        this.scenarios = scenarios;
        this.site = site;
        this.practice = practice;
        this.demo = demo;
        this.host = host;
        this.port = port;
        this.serves = serves;
    }

    void atStart(@Observes StartupEvent start) throws IOException {
        if (!demo) {
            return;
        }
        load();
        if (serves) {
            tellWhere();
        }
    }

    /** All of the demo: its people, its site and its tickets; what was loaded before is left alone. */
    public void load() throws IOException {
        scenarios.load(PEOPLE, text(PEOPLE));
        site.load(text("site.yaml"));
        for (String file : FILES) {
            scenarios.load(file, text(file));
        }
        practice.load(text("practice.yaml"));
    }

    private static String text(String file) throws IOException {
        try (InputStream yaml = DemoStart.class.getResourceAsStream("/demo-scenarios/" + file)) {
            return new String(yaml.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    private void tellWhere() {
        System.out.printf("""

                Benchtrail is at http://%s:%d
                  Demo accounts, all with the password %s
                    ines    technician              tomasz  trainee
                    ruth    technician and mentor   omar    supervisor
                    lena    administrator
                  Stop it with Ctrl+C.

                """, host, port, Scenarios.DEMO_PASSWORD);
    }
}
