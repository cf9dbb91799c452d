package org.benchtrail.platform.sql;

import jakarta.persistence.EntityManager;
import jakarta.persistence.Query;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.hibernate.query.NativeQuery;
import org.hibernate.query.TupleTransformer;
import org.jspecify.annotations.Nullable;

/**
 * A statement about to be sent within the running transaction, its parameters by name ({@code :ticket}). Rows come back as records
 * whose components are named like the columns: {@code followUp} for {@code follow_up}.
 */
public final class Sql {
    private final EntityManager database;
    private final String statement;
    private final Map<String, @Nullable Object> values = new LinkedHashMap<>();

    private Sql(EntityManager database, String statement) {
        this.database = database;
        this.statement = statement;
    }

    public static Sql of(EntityManager database, String statement) {
        return new Sql(database, statement);
    }

    /** @param value null only where the statement says of which type it is: {@code cast(:name as text)} */
    public Sql with(String name, @Nullable Object value) {
        values.put(name, value);
        return this;
    }

    public Sql with(Map<String, ?> named) {
        values.putAll(named);
        return this;
    }

    public <R extends Record> List<R> rows(Class<R> of) {
        return read(RecordRow.of(of));
    }

    /** The first row; empty if there is none. */
    public <R extends Record> Optional<R> row(Class<R> of) {
        return rows(of).stream().findFirst();
    }

    /** The values of the only column, none of which is null. */
    public <T> List<T> values(Class<T> of) {
        return read((row, names) -> of.cast(Objects.requireNonNull(RecordRow.fit(of, row[0]))));
    }

    /** The only value of the only row. */
    public <T> T value(Class<T> of) {
        return values(of).get(0);
    }

    /** Sends what changes rows; answers with how many. */
    public int run() {
        return query("").executeUpdate();
    }

    /** The statement with its values, behind {@code before}: so that it can be seen how the database goes about it. */
    Query query(String before) {
        return bound(database.createNativeQuery(before + statement));
    }

    @SuppressWarnings("unchecked") // of such a type is what the reading answers with
    private <T> List<T> read(TupleTransformer<T> reading) {
        Query query = database.createNativeQuery(statement);
        query.unwrap(NativeQuery.class).setTupleTransformer(reading);
        return List.copyOf((List<T>) bound(query).getResultList());
    }

    private Query bound(Query query) {
        values.forEach(query::setParameter);
        return query;
    }
}
