package org.benchtrail;

import io.quarkus.runtime.Quarkus;
import io.quarkus.runtime.QuarkusApplication;
import io.quarkus.runtime.annotations.QuarkusMain;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.benchtrail.demo.LoadCommand;
import org.benchtrail.operations.BackupCommand;
import org.benchtrail.operations.MigrateCommand;
import org.benchtrail.operations.RestoreCommand;
import org.benchtrail.platform.database.DatabaseNotStarted;
import org.benchtrail.platform.database.EmbeddedDatabase;
import org.benchtrail.seal.ExportCommand;
import org.benchtrail.seal.RestoreLeavesCommand;
import org.benchtrail.seal.VerifySiteCommand;
import org.benchtrail.seal.offline.VerifyCommand;
import org.benchtrail.seal.witness.WitnessCommand;
import org.benchtrail.ticket.erasure.EraseCommand;
import org.jspecify.annotations.Nullable;

/**
 * Where Benchtrail starts. With {@code BENCHTRAIL_DATABASE_URL} set it is a shop's server on that database; without, it
 * starts a PostgreSQL of its own beside it and shows the demo. {@code migrate} brings the schema up to date, {@code backup FILE} and
 * {@code restore FILE} keep and bring back all data, {@code load FILE...} loads scenarios, {@code export FOLDER} writes the log out,
 * {@code restore-leaves FOLDER} puts back what an old backup lacks of it,
 * {@code verify-site} holds all that is stored against the log,
 * {@code erase TICKET SUPERVISOR REASON} erases who reported a ticket, and all of them end; {@code verify} and {@code witness} need no database at all.
 */
@QuarkusMain
public class Benchtrail {
    private static final int MANAGEMENT_STEP = 1000;

    private static final String URL = "BENCHTRAIL_DATABASE_URL";

    /**
     * A command that works on the database and ends.
     *
     * @param usage its name, and the words that it takes; dots for more of them
     */
    private record Command(String usage, Class<? extends QuarkusApplication> application) {
        private String name() {
            return usage.split(" ")[0];
        }

        private boolean takes(int words) {
            int least = usage.split(" ").length;
            return words == least || (words > least && usage.endsWith("..."));
        }
    }

    private static final List<Command> BESIDE_THE_SERVER = List.of(
            new Command("migrate", MigrateCommand.class),
            new Command("backup FILE", BackupCommand.class),
            new Command("restore FILE", RestoreCommand.class),
            new Command("load FILE...", LoadCommand.class),
            new Command("export FOLDER", ExportCommand.class),
            new Command("restore-leaves FOLDER", RestoreLeavesCommand.class),
            new Command("verify-site", VerifySiteCommand.class),
            new Command("erase TICKET SUPERVISOR REASON...", EraseCommand.class));

    /** Commands that read what is there: without a database they have nothing to read. */
    private static final Set<String> OF_KEPT_DATA =
            Set.of("backup", "export", "restore-leaves", "verify-site", "erase");

    /** Commands on all data, whatever they are: nothing is added to them. */
    private static final Set<String> OF_ALL_DATA = Set.of("migrate", "backup", "restore");

    public static void main(String[] words) {
        alone(words);
        if (words.length > 0) {
            requireCommand(words);
        }
        set("quarkus.management.port", "" + beside(Integer.parseInt(value("quarkus.http.port", "8080"))));
        if (words.length > 0) {
            set("quarkus.http.host-enabled", "false");
            set("quarkus.management.host-enabled", "false");
            set("benchtrail.seal.every", "PT0S");
            set("quarkus.log.category.\"io.quarkus\".level", "WARN");
            set("quarkus.log.category.\"org.benchtrail.ticket.Origins\".level", "WARN");
            set("quarkus.log.category.\"org.benchtrail.people.FirstAdministrator\".level", "ERROR");
        }
        String url = setting(URL, "");
        if (words.length == 0) {
            requireSafeStart(url.isEmpty());
        }
        if (url.isEmpty()) {
            demo(words);
        } else {
            production(url, words);
            run(words);
        }
    }

    private static void requireCommand(String[] words) {
        Optional<Command> command = command(words[0]);
        if (command.isEmpty()) {
            end("Benchtrail does not know '" + words[0] + "'. It knows: "
                    + BESIDE_THE_SERVER.stream().map(Command::usage).collect(Collectors.joining(", "))
                    + ", verify FOLDER, witness DIR (no words start the server).");
        } else if (!command.get().takes(words.length)) {
            System.err.println("It is given so: " + command.get().usage());
            System.exit(2);
        }
    }

    private static Optional<Command> command(String name) {
        return BESIDE_THE_SERVER.stream().filter(one -> one.name().equals(name)).findFirst();
    }

    /** With a database of its own, which ends with it. */
    private static void demo(String[] words) {
        Path folder = Path.of(setting("BENCHTRAIL_DATA", "benchtrail-data")).toAbsolutePath();
        if (words.length > 0 && OF_KEPT_DATA.contains(words[0]) && !Files.exists(folder)) {
            end("There is nothing in " + folder + ", and no " + URL + " is set: name the one or the other.");
        }
        System.out.println(
                "Benchtrail keeps its data in " + folder + " (set BENCHTRAIL_DATA to choose another folder).");
        if (words.length > 0 && words[0].equals("backup")) {
            // beside a server that runs on the folder, if one does
            Optional<EmbeddedDatabase.Access> running = EmbeddedDatabase.running(folder);
            if (running.isPresent()) {
                use(running.get());
                run(words);
                return;
            }
        }
        try (EmbeddedDatabase database =
                EmbeddedDatabase.start(folder, sentence -> System.out.println("  " + sentence))) {
            database.supervise(sentence -> System.out.println("  " + sentence), Benchtrail::end);
            use(database.access());
            if (words.length == 0 || !OF_ALL_DATA.contains(words[0])) {
                set("benchtrail.demo", "true");
            }
            set("benchtrail.data-folder", folder.toString());
            set("benchtrail.sign-in.second-factor-for-administrators", "false");
            set(
                    "benchtrail.seal.key-file",
                    folder.resolve("seal").resolve("key").toString());
            run(words);
        } catch (DatabaseNotStarted failure) {
            System.err.println(failure.getMessage());
            System.exit(1);
        }
    }

    private static void use(EmbeddedDatabase.Access database) {
        set("quarkus.datasource.jdbc.url", database.jdbcUrl());
        set("quarkus.datasource.username", database.server().user());
        set("quarkus.datasource.password", database.server().password());
        set("quarkus.flyway.username", database.owner().user());
        set("quarkus.flyway.password", database.owner().password());
    }

    private static void requireSafeStart(boolean demo) {
        boolean tls = !value("quarkus.http.ssl.certificate.files", "").isEmpty()
                || !value("quarkus.http.ssl.certificate.key-store-file", "").isEmpty();
        boolean proxy = value("quarkus.http.proxy.proxy-address-forwarding", "").equals("true");
        new StartChecks(demo, value("quarkus.http.host", "127.0.0.1"), tls, proxy)
                .refusal()
                .ifPresent(Benchtrail::end);
    }

    /** The port for whoever runs the server, where none is set: several servers on one machine get several. */
    private static int beside(int port) {
        return port + MANAGEMENT_STEP > 65_535 ? port - MANAGEMENT_STEP : port + MANAGEMENT_STEP;
    }

    private static void end(String sentence) {
        System.err.println(sentence);
        System.exit(1);
    }

    /** Does what needs neither server nor database, and ends. */
    private static void alone(String[] words) {
        List<String> rest = words.length > 0 ? List.of(words).subList(1, words.length) : List.of();
        if (words.length > 0 && words[0].equals("verify")) {
            System.exit(VerifyCommand.run(rest, System.out));
        }
        if (words.length > 0 && words[0].equals("witness")) {
            System.exit(WitnessCommand.run(rest, System.out));
        }
    }

    private static void run(String[] words) {
        set("quarkus.http.body.uploads-directory", uploads());
        if (words.length > 0) {
            if (words[0].equals("backup")) {
                // servers of an older release may run on it
                set("quarkus.flyway.migrate-at-start", "false");
            }
            Quarkus.run(command(words[0]).orElseThrow().application(), Benchtrail::ended, words);
        } else {
            Quarkus.run(null, Benchtrail::ended);
        }
    }

    /** Tells why it ended, if it did not start: in a sentence what is known, else all of it. */
    private static void ended(int status, @Nullable Throwable failure) {
        if (failure != null) {
            StartFailure.sentence(failure).ifPresentOrElse(System.err::println, failure::printStackTrace);
        }
        System.exit(status);
    }

    /**
     * Where files wait while they are sent: a new owner-only folder. The framework's own default is one folder for everybody on
     * the machine, which whoever started first keeps the others out of.
     */
    private static String uploads() {
        try {
            Path folder = Files.createTempDirectory("benchtrail-uploads-");
            folder.toFile().deleteOnExit();
            return folder.toString();
        } catch (IOException failure) {
            throw new UncheckedIOException("There is no place for temporary files: " + failure.getMessage(), failure);
        }
    }

    /** A shop's own database: two accounts on it, one that owns the schema, one that only works in it. */
    private static void production(String url, String[] words) {
        set("quarkus.datasource.jdbc.url", url);
        // long enough for a balancer to notice that this node is no longer ready
        set("quarkus.shutdown.delay", "PT3S");
        // a server without the owner's account does not migrate: somebody else does, by the command
        boolean migrates = words.length > 0
                || !setting("BENCHTRAIL_OWNER_USER", "").isEmpty()
                || !setting("BENCHTRAIL_OWNER_PASSWORD", "").isEmpty();
        Map<String, String> needed = new LinkedHashMap<>();
        needed.put("quarkus.datasource.username", "BENCHTRAIL_DATABASE_USER");
        needed.put("quarkus.datasource.password", "BENCHTRAIL_DATABASE_PASSWORD");
        if (migrates) {
            needed.put("quarkus.flyway.username", "BENCHTRAIL_OWNER_USER");
            needed.put("quarkus.flyway.password", "BENCHTRAIL_OWNER_PASSWORD");
        } else {
            set("quarkus.flyway.migrate-at-start", "false");
        }
        List<String> missing = needed.values().stream()
                .filter(name -> setting(name, "").isEmpty())
                .toList();
        if (!missing.isEmpty()) {
            end(URL + " is set, so these have to be set as well: " + String.join(", ", missing)
                    + ". See the README, the part about a shop's own server.");
        }
        needed.forEach((property, name) -> set(property, setting(name, "")));
    }

    /** A setting of the framework, from the command line or the environment. */
    private static String value(String name, String otherwise) {
        @Nullable String given = System.getProperty(name);
        return given == null
                ? setting(name.toUpperCase(Locale.ROOT).replace('.', '_').replace('-', '_'), otherwise)
                : given;
    }

    private static String setting(String name, String otherwise) {
        @Nullable String value = System.getenv(name);
        return value == null || value.isBlank() ? otherwise : value;
    }

    /** Only where nobody has set it, so that any setting can still be given on the command line. */
    private static void set(String name, String value) {
        if (System.getProperty(name) == null) {
            System.setProperty(name, value);
        }
    }
}
